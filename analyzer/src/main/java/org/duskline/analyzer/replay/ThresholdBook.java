package org.duskline.analyzer.replay;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.watch.InForce;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Which thresholds were in force when, who adopted them and why. Nothing is ever overwritten. Read into memory when it
 * is opened, so that asking what holds costs nothing; one book a running program. Any thread.
 */
public final class ThresholdBook {
    private static final Adopted DEFAULTS = new Adopted(
            1,
            Optional.empty(),
            Thresholds.defaults(),
            Instant.EPOCH,
            Optional.empty(),
            "Duskline",
            "What Duskline begins with.",
            List.of(),
            "",
            OptionalInt.empty());

    private final Jdbi jdbi;
    private volatile List<Adopted> versions;

    private ThresholdBook(Jdbi jdbi) {
        this.jdbi = jdbi;
        this.versions = read();
    }

    /** Opens the book in the store's file, creating its tables if needed. A new book begins with the defaults. */
    public static ThresholdBook open(Store store) {
        store.migrate("replay_history", "classpath:org/duskline/analyzer/replay");
        return new ThresholdBook(store.jdbi());
    }

    /**
     * Puts thresholds in force on the whole line.
     *
     * @param predicted what the replay foretold; may be empty
     */
    public Adopted adopt(Thresholds thresholds, Instant at, String by, String why, String predicted) {
        return write(Optional.empty(), thresholds, at, Optional.empty(), by, why, predicted, OptionalInt.empty());
    }

    /**
     * Gives one trap other numbers for a while. A later exception for the same trap takes its place.
     *
     * @param until first moment at which the line's own thresholds hold again
     */
    public Adopted except(
            String trap, Thresholds thresholds, Instant from, Instant until, String by, String why, String predicted) {
        return write(Optional.of(trap), thresholds, from, Optional.of(until), by, why, predicted, OptionalInt.empty());
    }

    /**
     * Puts an earlier version's numbers in force again, on the line or at the trap that it was for, as a new version.
     *
     * @throws IllegalArgumentException if there is no such version, or if it was an exception that has ended
     */
    public Adopted goBack(int version, Instant at, String by, String why) {
        Adopted old = version(version)
                .orElseThrow(() -> new IllegalArgumentException(
                        "There is no version " + version + " of the thresholds to go back to."));
        if (old.ended(at)) {
            throw new IllegalArgumentException("Version " + version + " was an exception until "
                    + old.until().get() + ". Make a new one with a later end.");
        }
        return write(old.trap(), old.thresholds(), at, old.until(), by, why, "", OptionalInt.of(version));
    }

    private synchronized Adopted write(
            Optional<String> trap,
            Thresholds thresholds,
            Instant at,
            Optional<Instant> until,
            String by,
            String why,
            String predicted,
            OptionalInt backTo) {
        Thresholds before = trap.map(name -> inForce(name, at).thresholds())
                .orElseGet(() -> ofLine(at).thresholds());
        Adopted adopted = new Adopted(
                versions.get(versions.size() - 1).version() + 1,
                trap,
                thresholds,
                at,
                until,
                by,
                why,
                ThresholdText.difference(before, thresholds),
                predicted,
                backTo);
        jdbi.useHandle(handle -> handle.createUpdate("INSERT INTO threshold_version (version, trap, thresholds, at_ms,"
                        + " until_ms, adopted_by, why, changed, predicted, back_to) VALUES (:version, :trap,"
                        + " :thresholds, :at, :until, :by, :why, :changed, :predicted, :back)")
                .bind("version", adopted.version())
                .bind("trap", trap.orElse(null))
                .bind("thresholds", ThresholdText.write(thresholds))
                .bind("at", at.toEpochMilli())
                .bind("until", until.map(Instant::toEpochMilli).orElse(null))
                .bind("by", by)
                .bind("why", why)
                .bind("changed", String.join("\n", adopted.changed()))
                .bind("predicted", predicted)
                .bind("back", backTo.isPresent() ? backTo.getAsInt() : null)
                .execute());
        versions = read();
        return adopted;
    }

    private List<Adopted> read() {
        List<Adopted> all = new ArrayList<>(List.of(DEFAULTS));
        all.addAll(jdbi.withHandle(handle -> handle.createQuery("SELECT * FROM threshold_version ORDER BY version")
                .map(ThresholdBook::row)
                .list()));
        return List.copyOf(all);
    }

    private static Adopted row(ResultSet row, StatementContext context) throws SQLException {
        long until = row.getLong("until_ms");
        Optional<Instant> end = row.wasNull() ? Optional.empty() : Optional.of(Instant.ofEpochMilli(until));
        int back = row.getInt("back_to");
        String changed = row.getString("changed");
        return new Adopted(
                row.getInt("version"),
                Optional.ofNullable(row.getString("trap")),
                ThresholdText.read(row.getString("thresholds"), Thresholds.defaults()),
                Instant.ofEpochMilli(row.getLong("at_ms")),
                end,
                row.getString("adopted_by"),
                row.getString("why"),
                changed.isEmpty() ? List.of() : List.of(changed.split("\n")),
                row.getString("predicted"),
                back == 0 ? OptionalInt.empty() : OptionalInt.of(back));
    }

    /** All versions, first to last. */
    public List<Adopted> versions() {
        return versions;
    }

    /** One version; empty if there is none of that number. */
    public Optional<Adopted> version(int number) {
        return versions.stream().filter(one -> one.version() == number).findFirst();
    }

    /** The version in force on the line at a moment, exceptions apart. */
    public Adopted ofLine(Instant at) {
        return versions.stream()
                .filter(adopted -> adopted.ofLine() && !adopted.at().isAfter(at))
                .reduce((earlier, later) -> later)
                .orElse(DEFAULTS);
    }

    /** The exception that holds at a trap at a moment: its newest that has begun, unless that one has ended. */
    public Optional<Adopted> exception(String trap, Instant at) {
        return versions.stream()
                .filter(adopted -> adopted.trap().filter(trap::equals).isPresent()
                        && !adopted.at().isAfter(at))
                .reduce((earlier, later) -> later)
                .filter(adopted -> !adopted.ended(at));
    }

    /** What holds at a trap at a moment: its exception, or else the line's version. */
    public InForce inForce(String trap, Instant at) {
        Adopted adopted = exception(trap, at).orElseGet(() -> ofLine(at));
        return new InForce(adopted.version(), adopted.thresholds());
    }

    /**
     * What a version has done since.
     *
     * @param told move-ins raised under it
     * @param swarms of them answered to be swarms
     * @param wrong of them answered to be none
     */
    public record Effect(int told, int swarms, int wrong) {}

    /** What a version has done since it was adopted. */
    public Effect effect(int version, FindingLog findings, AnswerLog answers) {
        List<Finding> raised = findings.all().stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && finding.thresholds() == version)
                .toList();
        List<Answer> verdicts = raised.stream()
                .flatMap(finding -> answers.verdict(finding.trap(), finding.kind(), finding.onset()).stream())
                .toList();
        int wrong = (int)
                verdicts.stream().filter(answer -> answer.said().deniesASwarm()).count();
        return new Effect(raised.size(), verdicts.size() - wrong, wrong);
    }
}
