package org.duskline.web.deliver;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends what is due. One round at a time; a message is marked as sent after the other side has taken it, so that a crash in
 * between sends it again under the same identity, by which mail programs and receivers know the repeat.
 */
final class Dispatcher {
    private static final Logger LOG = LoggerFactory.getLogger(Dispatcher.class);

    private final AddressBook book;
    private final ParcelLog parcels;
    private final ChannelHealth health;
    private final Map<Means, Carrier> carriers;
    private final RetrySchedule schedule;
    private final InstantSource clock;
    private final RandomGenerator random;

    Dispatcher(
            AddressBook book,
            ParcelLog parcels,
            ChannelHealth health,
            Map<Means, Carrier> carriers,
            RetrySchedule schedule,
            InstantSource clock,
            RandomGenerator random) {
        this.book = book;
        this.parcels = parcels;
        this.health = health;
        this.carriers = Map.copyOf(carriers);
        this.schedule = schedule;
        this.clock = clock;
        this.random = random;
    }

    /** Sends all that is due now. */
    synchronized void round() {
        for (Channel channel : book.channels()) {
            boolean more = true;
            while (more) {
                more = sendNext(channel);
            }
        }
    }

    /** Whether the channel may have more to send at once. */
    private boolean sendNext(Channel channel) {
        Instant now = clock.instant();
        Optional<Parcel> next = parcels.next(channel.id(), now);
        if (next.isEmpty() || next.get().next().isAfter(now)) {
            return false;
        }
        Parcel parcel = next.get();
        boolean tooOld =
                parcel.tries() > 0 && parcel.made().plus(schedule.giveUpAfter()).isBefore(now);
        if (tooOld) {
            parcels.givenUp(parcel, now);
            LOG.warn(
                    "Gave up message {} for {} after {} tries: {}",
                    parcel.id(),
                    channel,
                    parcel.tries(),
                    parcel.words());
            return true;
        }
        return settle(channel, parcel, carry(channel, parcel));
    }

    private boolean settle(Channel channel, Parcel parcel, Outcome outcome) {
        Instant now = clock.instant();
        if (outcome instanceof Outcome.Delivered) {
            parcels.sent(parcel, outcome.words(), now);
            health.works(channel);
            return true;
        }
        parcels.failed(parcel, outcome.words(), now.plus(schedule.pause(parcel.tries() + 1, random)));
        health.fails(channel, outcome.words(), now);
        LOG.warn("Message {} did not get through {}: {}", parcel.id(), channel, outcome.words());
        return false;
    }

    /** Tries a parcel once and reports what really happened. */
    Outcome carry(Channel channel, Parcel parcel) {
        Carrier carrier = carriers.get(channel.means());
        if (carrier == null) {
            return new Outcome.Failed("Nothing is set up to send by " + channel.named()
                    + ". Enter the mail server or the broker in the settings.");
        }
        try {
            return carrier.carry(channel, parcel);
        } catch (RuntimeException broken) {
            // One broken channel must not keep the others from being served.
            return new Outcome.Failed("The " + channel.named() + " failed inside Duskline ("
                    + broken.getClass().getSimpleName() + "). Check its address, and report this.");
        }
    }
}
