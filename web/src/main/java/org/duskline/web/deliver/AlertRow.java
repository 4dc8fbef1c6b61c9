package org.duskline.web.deliver;

import java.time.Instant;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.jdbi.v3.core.Handle;

/** A new row of the outbox. */
record AlertRow(
        long channel,
        String thread,
        String step,
        boolean opens,
        Stage stage,
        Optional<String> trap,
        Optional<Kind> kind,
        AlertText.Written written,
        String object,
        Instant at,
        Instant due) {

    /** A notice about the program itself: a happening of its own, told once. */
    static AlertRow notice(long channel, String thread, AlertText.Written written, Instant now) {
        return new AlertRow(
                channel,
                thread,
                "TOLD",
                true,
                Stage.RAISED,
                Optional.empty(),
                Optional.empty(),
                written,
                "{}",
                now,
                now);
    }

    /** Puts it in, unless this channel has this step of this thread already. */
    void insert(Handle handle) {
        handle.createUpdate("INSERT INTO alert (channel, thread, step, opens, stage, trap, kind, title, words, object,"
                        + " written_ms, due_ms) VALUES (:channel, :thread, :step, :opens, :stage, :trap, :kind, :title,"
                        + " :words, :object, :written, :due) ON CONFLICT (channel, thread, step) DO NOTHING")
                .bind("channel", channel)
                .bind("thread", thread)
                .bind("step", step)
                .bind("opens", opens)
                .bind("stage", stage.name())
                .bind("trap", trap.orElse(null))
                .bind("kind", kind.map(Kind::name).orElse(null))
                .bind("title", written.title())
                .bind("words", written.words())
                .bind("object", object)
                .bind("written", at.toEpochMilli())
                .bind("due", due.toEpochMilli())
                .execute();
    }
}
