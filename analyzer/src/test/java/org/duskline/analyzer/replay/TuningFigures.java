package org.duskline.analyzer.replay;

import java.io.PrintStream;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.prove.PlayedSeason;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.season.Truth;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.duskline.collector.store.Store;

/**
 * Prints figures that belong to no test, since they take minutes or depend on the machine. Arguments: {@code replay DAYS
 * TRAPS} for the ratio of a replay to reading the same rows with the bare driver; {@code suggest DAYS TRAPS UNSEEN} for
 * what suggestions are worth on seasons that the search never saw, on a line among gardens and on an ordinary one.
 */
final class TuningFigures {
    private static final Cost COST = new Cost(100, 20, 2);
    private static final int ROUNDS = 3;
    private static final long LEARNT_FROM = 301;
    private static final long UNSEEN_FROM = 9001;

    private final PrintStream out;

    private TuningFigures(PrintStream out) {
        this.out = out;
    }

    public static void main(String[] arguments) throws SQLException {
        TuningFigures figures = new TuningFigures(System.out);
        int days = Integer.parseInt(arguments[1]);
        int traps = Integer.parseInt(arguments[2]);
        if (arguments[0].equals("replay")) {
            figures.replay(days, traps);
        } else {
            figures.suggest("among gardens", true, days, traps, Integer.parseInt(arguments[3]));
            figures.suggest("ordinary", false, days, traps, Integer.parseInt(arguments[3]));
        }
    }

    private void replay(int days, int traps) throws SQLException {
        try (PlayedSeason season = new PlayedSeason(Season.of(1, Level.TYPICAL, days, traps), done -> {})) {
            for (int round = 0; round < ROUNDS; round++) {
                long began = System.nanoTime();
                long rows = bare(season.store());
                double bare = seconds(began);
                began = System.nanoTime();
                Past past = Past.read(season.store());
                double reading = seconds(began);
                began = System.nanoTime();
                int told = new Replay(past).run(Thresholds.defaults()).told().size();
                double folding = seconds(began);
                out.printf(
                        Locale.ROOT,
                        "%d rows: bare driver %.2f s; read and decoded %.2f s (%.1f times); folded from memory %.2f s"
                                + " (%.1f times); %d findings%n",
                        rows,
                        bare,
                        reading,
                        reading / bare,
                        folding,
                        folding / bare,
                        told);
            }
        }
    }

    private static double seconds(long began) {
        return (System.nanoTime() - began) / 1e9;
    }

    /** Every column of every sample through the driver, in the order of receipt, and nothing done with it. */
    private static long bare(Store store) throws SQLException {
        return store.jdbi().withHandle(handle -> {
            try (var query = handle.getConnection().createStatement();
                    ResultSet row = query.executeQuery("SELECT sample.*, fresh.received_ms, fresh.id FROM pack AS fresh"
                            + " CROSS JOIN sample ON sample.node = fresh.node AND time_ms BETWEEN fresh.first_ms AND"
                            + " fresh.last_ms AND sample.pack = fresh.id ORDER BY fresh.id, time_ms, twin")) {
                return rows(row);
            }
        });
    }

    private static long rows(ResultSet row) throws SQLException {
        long rows = 0;
        double kept = 0;
        while (row.next()) {
            rows++;
            for (int column = 1; column <= 17; column++) {
                kept += row.getDouble(column);
                kept += row.wasNull() ? 1 : 0;
            }
        }
        return Double.isNaN(kept) ? -rows : rows;
    }

    private void suggest(String line, boolean gardens, int days, int traps, int unseen) {
        Suggestion suggestion;
        try (PlayedSeason learnt = new PlayedSeason(season(gardens, LEARNT_FROM, days, traps), done -> {})) {
            Past past = Past.read(learnt.store());
            List<Answer> answers = answers(new Replay(past).run(Thresholds.defaults()), learnt.truth());
            suggestion = new Tuner(past, answers, Ballast.usual(done -> {}, () -> false))
                    .suggest(
                            trap -> Thresholds.defaults(),
                            Optional.empty(),
                            Thresholds.defaults(),
                            COST,
                            (sets, last) -> {},
                            () -> false);
            long wrong = answers.stream()
                    .filter(answer -> answer.said().deniesASwarm())
                    .count();
            out.printf("%s: %d answers, %d of them wrong. %s%n", line, answers.size(), wrong, suggestion.words());
        }
        Ballast judge = Ballast.of(UNSEEN_FROM, 0, days, traps, done -> {}, () -> false);
        for (int i = 0; i < unseen; i++) {
            judge.add(season(gardens, UNSEEN_FROM + i, days, traps), done -> {});
        }
        out.printf(
                Locale.ROOT,
                "%s, %d unseen seasons of %d days and %d traps, %d swarms: cost a swarm %.2f under the defaults, %.2f"
                        + " as suggested%n",
                line,
                unseen,
                days,
                traps,
                judge.arrivals(),
                judge.costPerArrival(Thresholds.defaults(), COST),
                judge.costPerArrival(suggestion.thresholds(), COST));
    }

    private static Season season(boolean gardens, long seed, int days, int traps) {
        return gardens
                ? Season.amongGardens(seed, Level.TYPICAL, days, traps)
                : Season.of(seed, Level.TYPICAL, days, traps);
    }

    /** What a keeper who drives to every alarm answers. */
    private static List<Answer> answers(Played played, Truth truth) {
        List<Answer> answers = new ArrayList<>();
        for (Told told : played.told()) {
            if (told.kind() == Kind.MOVE_IN) {
                Instant raised = told.first().raised();
                Said said = swarm(told, truth) ? Said.SWARM : Said.RAIN;
                answers.add(new Answer(told.trap(), told.kind(), told.onset(), said, "", raised, "keeper"));
            }
        }
        return answers;
    }

    private static boolean swarm(Told told, Truth truth) {
        return truth.traps().stream()
                .filter(trap -> trap.trap().equals(told.trap()))
                .map(TrapTruth::arrivals)
                .flatMap(List::stream)
                .anyMatch(arrival -> Ballast.fits(told, arrival));
    }
}
