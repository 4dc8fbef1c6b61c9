package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.jdbi.v3.core.Handle;

/**
 * Puts what is to be told beside the findings, in their transaction: a finding is never kept without its alerts, nor an
 * alert without its finding. What was put in once is not put in again.
 */
final class Outbox implements FindingLog.Along {
    /** How long an alert waits for others, so that several traps within minutes make one message. */
    static final Duration GATHERING = Duration.ofSeconds(90);
    /** How long a small matter at a trap is not told anew. */
    static final Duration FLAP_PAUSE = Duration.ofHours(12);
    /** How often a happening may take the same turn before its turns are no longer told. */
    private static final int TURNS = 2;

    private final AlertText text;
    private final InstantSource clock;

    Outbox(AlertText text, InstantSource clock) {
        this.text = text;
        this.clock = clock;
    }

    @Override
    public void write(Handle handle, List<Finding> changes) {
        if (changes.isEmpty()) {
            return;
        }
        List<Channel> channels = AddressBook.channels(handle);
        for (Finding finding : changes) {
            channels.forEach(channel -> put(handle, channel, finding));
        }
    }

    static String thread(Finding finding) {
        return finding.trap() + "/" + finding.kind().wireName() + "/" + finding.onset();
    }

    private record Last(long id, Stage stage, boolean opens, boolean untold) {}

    Decision put(Handle handle, Channel channel, Finding finding) {
        if (!channel.kinds().contains(finding.kind())) {
            return Decision.NOT_WANTED;
        }
        Optional<Last> last = last(handle, channel, thread(finding));
        return last.isPresent() ? goOn(handle, channel, finding, last.get()) : open(handle, channel, finding);
    }

    private Decision open(Handle handle, Channel channel, Finding finding) {
        if (!finding.standing()) {
            return Decision.NOT_CONCERNED;
        }
        boolean flapping = !Telling.everyTime(finding.kind()) && toldLately(handle, channel, finding);
        if (flapping) {
            return Decision.FLAPPING;
        }
        insert(handle, channel, finding, true);
        return Decision.OPENED;
    }

    private Decision goOn(Handle handle, Channel channel, Finding finding, Last last) {
        if (last.stage() == finding.stage()) {
            return Decision.SAME_AGAIN;
        }
        if (last.untold() && finding.stage() == Stage.WITHDRAWN) {
            drop(handle, last.id(), Decision.TAKEN_BACK);
            // If an earlier step has reached the person, the withdrawal is news all the same.
            return last.opens() ? Decision.TAKEN_BACK : goOnAfterDrop(handle, channel, finding);
        }
        if (last.untold() && last.opens() && finding.standing()) {
            update(handle, last.id(), channel, finding);
            return Decision.FOLDED_IN;
        }
        if (!Telling.worthTelling(finding.kind(), finding.stage())) {
            return Decision.NOT_WORTH_TELLING;
        }
        if (turns(handle, channel, finding) >= TURNS) {
            return Decision.FLAPPING;
        }
        insert(handle, channel, finding, false);
        return Decision.CONTINUED;
    }

    private Decision goOnAfterDrop(Handle handle, Channel channel, Finding finding) {
        return last(handle, channel, thread(finding))
                .map(earlier -> goOn(handle, channel, finding, earlier))
                .orElse(Decision.TAKEN_BACK);
    }

    private static Optional<Last> last(Handle handle, Channel channel, String thread) {
        return handle.createQuery(
                        "SELECT id, stage, opens, parcel IS NULL FROM alert WHERE channel = :channel AND thread ="
                                + " :thread AND dropped IS NULL ORDER BY id DESC LIMIT 1")
                .bind("channel", channel.id())
                .bind("thread", thread)
                .map((row, context) ->
                        new Last(row.getLong(1), Stage.valueOf(row.getString(2)), row.getBoolean(3), row.getBoolean(4)))
                .findOne();
    }

    private boolean toldLately(Handle handle, Channel channel, Finding finding) {
        return handle.createQuery(
                                "SELECT count(*) FROM alert WHERE channel = :channel AND trap = :trap AND kind = :kind"
                                        + " AND opens = 1 AND dropped IS NULL AND written_ms > :since")
                        .bind("channel", channel.id())
                        .bind("trap", finding.trap())
                        .bind("kind", finding.kind().name())
                        .bind("since", clock.instant().minus(FLAP_PAUSE).toEpochMilli())
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    private static int turns(Handle handle, Channel channel, Finding finding) {
        return handle.createQuery(
                        "SELECT count(*) FROM alert WHERE channel = :channel AND thread = :thread AND stage = :stage")
                .bind("channel", channel.id())
                .bind("thread", thread(finding))
                .bind("stage", finding.stage().name())
                .mapTo(Integer.class)
                .one();
    }

    private static void drop(Handle handle, long alert, Decision why) {
        handle.createUpdate("UPDATE alert SET dropped = :why WHERE id = :id")
                .bind("why", why.name())
                .bind("id", alert)
                .execute();
    }

    private void update(Handle handle, long alert, Channel channel, Finding finding) {
        AlertText.Written written = text.write(finding, channel.person(), clock.instant());
        handle.createUpdate(
                        "UPDATE alert SET stage = :stage, title = :title, words = :words, object = :object WHERE id = :id")
                .bind("stage", finding.stage().name())
                .bind("title", written.title())
                .bind("words", written.words())
                .bind("object", FindingJson.text(finding))
                .bind("id", alert)
                .execute();
    }

    private void insert(Handle handle, Channel channel, Finding finding, boolean opens) {
        Instant now = clock.instant();
        Person person = channel.person();
        AlertText.Written written = text.write(finding, person, now);
        Instant ready = now.plus(GATHERING);
        Instant due = Telling.cannotWait(finding)
                ? ready
                : person.quiet()
                        .map(quiet -> quiet.nextLoud(ready, person.zone()))
                        .orElse(ready);
        new AlertRow(
                        channel.id(),
                        thread(finding),
                        finding.stage().name() + "-" + (turns(handle, channel, finding) + 1),
                        opens,
                        finding.stage(),
                        Optional.of(finding.trap()),
                        Optional.of(finding.kind()),
                        written,
                        FindingJson.text(finding),
                        now,
                        due)
                .insert(handle);
    }
}
