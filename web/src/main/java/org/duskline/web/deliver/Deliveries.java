package org.duskline.web.deliver;

import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The entry of this package: takes findings in the transaction that keeps them, and sends what they cause.
 *
 * <p>Safe for many threads. After {@link #start} a thread of its own sends; without it {@link #round} does.
 */
public final class Deliveries implements FindingLog.Along, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Deliveries.class);
    private static final Duration BETWEEN_ROUNDS = Duration.ofSeconds(5);
    private static final Duration BETWEEN_BEATS = Duration.ofMinutes(1);
    private static final Duration BETWEEN_REMINDERS = Duration.ofMinutes(1);
    private static final Duration DRAWING_TAKES = Duration.ofSeconds(5);
    private static final Duration STOPPING_TAKES = Duration.ofSeconds(15);

    /**
     * What messages travel by.
     *
     * @param mail the mail server, if there is one
     * @param broker the broker, if there is one
     * @param pages where readers' browsers find the pages; without it messages bear no link
     * @param patience how long a mail server or webhook may take for one step of an answer
     * @param retries when to try again
     * @param artist who draws the curves that go with the messages, if anybody
     */
    public record Equipment(
            Optional<MailSettings> mail,
            Optional<Broker> broker,
            Optional<URI> pages,
            Duration patience,
            RetrySchedule retries,
            Optional<Artist> artist) {
        private static final Duration USUAL_PATIENCE = Duration.ofSeconds(10);

        /** With the usual patience and retries. */
        public Equipment(
                Optional<MailSettings> mail, Optional<Broker> broker, Optional<URI> pages, Optional<Artist> artist) {
            this(mail, broker, pages, USUAL_PATIENCE, RetrySchedule.USUAL, artist);
        }

        /** Without pictures. */
        public Equipment(
                Optional<MailSettings> mail,
                Optional<Broker> broker,
                Optional<URI> pages,
                Duration patience,
                RetrySchedule retries) {
            this(mail, broker, pages, patience, retries, Optional.empty());
        }

        /** With the usual patience and retries, without pictures. */
        public Equipment(Optional<MailSettings> mail, Optional<Broker> broker, Optional<URI> pages) {
            this(mail, broker, pages, Optional.empty());
        }
    }

    private final Store store;
    private final InstantSource clock;
    private final AddressBook book;
    private final AnswerLink links;
    private final Outbox outbox;
    private final Reminders reminders;
    private final ParcelLog parcels;
    private final Pulse pulse;
    private final Pictures pictures;
    private final Dispatcher dispatcher;
    private final ScheduledExecutorService thread;

    private Deliveries(Store store, Equipment equipment, InstantSource clock, RandomGenerator random) {
        this.store = store;
        this.clock = clock;
        this.book = new AddressBook(store.jdbi());
        Keyring keyring = Keyring.of(store.jdbi());
        this.links = new AnswerLink(keyring.linkKey());
        AlertText text = new AlertText(store.line()::trap, links, equipment.pages());
        this.outbox = new Outbox(text, clock);
        this.reminders = new Reminders(text);
        this.parcels = new ParcelLog(store.jdbi());
        this.pulse = new Pulse(store.jdbi());
        this.pictures = new Pictures(equipment.artist(), equipment.pages(), DRAWING_TAKES);
        this.dispatcher = new Dispatcher(
                book,
                parcels,
                new ChannelHealth(store.jdbi()),
                carriers(equipment, keyring.name(), clock, pictures),
                equipment.retries(),
                clock,
                random);
        this.thread = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread made = new Thread(task, "dispatcher");
            made.setDaemon(true);
            return made;
        });
    }

    /** Opens the outbox in a store, creating its tables if needed. Sends nothing yet. */
    public static Deliveries open(Store store, Equipment equipment, InstantSource clock, RandomGenerator random) {
        store.migrate("deliver_history", "classpath:org/duskline/web/deliver");
        return new Deliveries(store, equipment, clock, random);
    }

    private static Map<Means, Carrier> carriers(
            Equipment equipment, String installation, InstantSource clock, Pictures pictures) {
        Map<Means, Carrier> carriers = new EnumMap<>(Means.class);
        carriers.put(Means.LOG, new LogCarrier());
        carriers.put(Means.WEBHOOK, new WebhookCarrier(installation, equipment.patience(), clock, pictures));
        equipment
                .mail()
                .ifPresent(mail -> carriers.put(
                        Means.EMAIL, new MailCarrier(mail, installation, equipment.patience(), clock, pictures)));
        equipment.broker().ifPresent(broker -> carriers.put(Means.MQTT, new BrokerCarrier(broker)));
        return carriers;
    }

    @Override
    public void write(Handle handle, List<Finding> changes) {
        outbox.write(handle, changes);
    }

    public AddressBook book() {
        return book;
    }

    /** Issues and checks the links by which readers answer. */
    public AnswerLink links() {
        return links;
    }

    /** The newest messages with what became of each, newest first. */
    public List<Parcel> latest(int limit) {
        return parcels.latest(limit);
    }

    /** What waits to be put into a message. */
    public List<Pending> pending() {
        return parcels.pending();
    }

    /**
     * How long nobody was watching before this start, or before an earlier one that could not tell it. To be asked before
     * {@link #start}; when what came meanwhile has been read, {@link #tellMissed} says so.
     *
     * @param packs how many messages of nodes are stored now
     */
    public Optional<Pulse.Gap> gap(long packs) {
        return pulse.gap(clock.instant(), packs);
    }

    /**
     * Tells everybody once, through all their channels, what was missed while the program was down.
     *
     * @param gap when it was down
     * @param readings how many of the nodes' messages have been read since
     * @param found what was found in them
     */
    public void tellMissed(Pulse.Gap gap, int readings, List<Finding> found) {
        Instant now = clock.instant();
        store.jdbi().useTransaction(handle -> {
            for (Channel channel : AddressBook.channels(handle)) {
                List<String> happened = found.stream()
                        .filter(finding -> channel.kinds().contains(finding.kind()))
                        .map(finding -> finding.trap() + ": " + Phrases.what(finding.kind()) + ", since "
                                + AlertText.moment(
                                        finding.onset(), channel.person().zone()))
                        .distinct()
                        .toList();
                AlertText.Written written = AlertText.missed(gap, readings, happened, channel.person());
                AlertRow.notice(channel.id(), "down/" + gap.from(), written, now)
                        .insert(handle);
            }
            Pulse.told(handle);
        });
    }

    /** Sends a message that says it is only a test, at once and once, and reports what really happened. */
    public Outcome test(Channel channel) {
        Instant now = clock.instant();
        String words =
                "This is a test, sent " + AlertText.moment(now, channel.person().zone())
                        + ". If you read it, alerts reach you here. Nothing has happened at your traps.";
        Alert alert = new Alert(0, "test/" + now, "TEST", Optional.empty(), "Test of your alerts", words, "{}", now);
        // Below zero, and another for every test, so that its identity is never that of a true message.
        long number = -now.toEpochMilli();
        return dispatcher.carry(
                channel,
                new Parcel(
                        number,
                        channel.id(),
                        now,
                        now,
                        0,
                        State.WAITING,
                        "",
                        Optional.empty(),
                        List.of(alert),
                        List.of()));
    }

    /**
     * Reminds everybody who wants to be reminded of the traps that can soon be closed, or can be. May be asked as often as
     * one likes: each reminder is put in once an evening.
     */
    public void remind(List<Unanswered> traps) {
        if (!traps.isEmpty()) {
            store.jdbi().useTransaction(handle -> reminders.remind(handle, traps, clock.instant()));
        }
    }

    /**
     * Begins to send, to beat and to remind.
     *
     * @param tonight which traps nobody has answered for, asked once a minute
     */
    public void start(Supplier<List<Unanswered>> tonight) {
        every(BETWEEN_ROUNDS, dispatcher::round);
        every(BETWEEN_BEATS, this::beat);
        every(BETWEEN_REMINDERS, () -> remind(tonight.get()));
    }

    private void every(Duration pause, Runnable work) {
        thread.scheduleWithFixedDelay(() -> guarded(work), 0, pause.toMillis(), TimeUnit.MILLISECONDS);
    }

    /** A locked or full database must not end delivery for good. */
    private static void guarded(Runnable work) {
        try {
            work.run();
        } catch (RuntimeException failed) {
            LOG.error("Delivery stumbled and goes on: {}", failed.getMessage());
        }
    }

    /** Sends all that is due now. */
    public void round() {
        dispatcher.round();
    }

    /** Notes that the program is alive, for its next start. */
    public void beat() {
        pulse.beat(clock.instant());
    }

    /** Ends after the message under way; what still waits is sent after the next start. */
    @Override
    public void close() {
        thread.shutdown();
        try {
            if (!thread.awaitTermination(STOPPING_TAKES.toMillis(), TimeUnit.MILLISECONDS)) {
                thread.shutdownNow();
            }
        } catch (InterruptedException e) {
            thread.shutdownNow();
            Thread.currentThread().interrupt();
        }
        pictures.close();
    }
}
