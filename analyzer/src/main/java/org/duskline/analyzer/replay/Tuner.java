package org.duskline.analyzer.replay;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Answer;

/**
 * Searches for thresholds that would have cost the keeper less: on the answered move-ins of the line, with ordinary
 * synthetic seasons as ballast. Runs on its caller's thread.
 */
public final class Tuner {
    /** The ballast weighs as much as so many answers. */
    private static final double BALLAST_ANSWERS = 12;

    private final Past past;
    private final List<Answer> answers;
    private final Ballast ballast;

    /** @param answers all that keepers gave, in the order in which they gave them */
    public Tuner(Past past, List<Answer> answers, Ballast ballast) {
        this.past = past;
        this.answers = List.copyOf(answers);
        this.ballast = ballast;
    }

    /** Told how many sets have been tried. */
    @FunctionalInterface
    public interface Progress {
        void tried(int sets, Thresholds last);
    }

    /**
     * Searches.
     *
     * @param inForce what holds at a trap now, by its name
     * @param trap the one trap to search for; empty for the line
     * @param line the line's thresholds, or the trap's: what the search begins with
     */
    public Suggestion suggest(
            Function<String, Thresholds> inForce,
            Optional<String> trap,
            Thresholds line,
            Cost cost,
            Progress progress,
            BooleanSupplier cancelled) {
        List<Answer> cases = cases(answers).stream()
                .filter(answer -> trap.isEmpty() || trap.get().equals(answer.trap()))
                .toList();
        Replay replay = new Replay(past);
        int[] sets = {0};
        return Suggestion.search(
                line,
                thresholds -> {
                    progress.tried(++sets[0], thresholds);
                    List<Told> told = cases.size() < Suggestion.FEWEST
                            ? List.of()
                            : replay.run(
                                            at -> trap.isEmpty() || trap.get().equals(at)
                                                    ? thresholds
                                                    : inForce.apply(at),
                                            Instant.MIN,
                                            Instant.MAX,
                                            (done, until, soFar) -> {},
                                            cancelled)
                                    .told();
                    return costs(cases, told, cost);
                },
                thresholds -> ballast.costPerArrival(thresholds, cost),
                BALLAST_ANSWERS,
                ballast.arrivals(),
                1,
                cancelled);
    }

    private double[] costs(List<Answer> cases, List<Told> told, Cost cost) {
        double[] costs = new double[cases.size()];
        double besides = cost.ofWithdrawn(told, answers) / Math.max(1, cases.size());
        for (int i = 0; i < costs.length; i++) {
            costs[i] = cost.of(cases.get(i), told) + besides;
        }
        return costs;
    }

    /** One case a move-in: what was answered last. */
    static List<Answer> cases(List<Answer> answers) {
        Map<String, Answer> last = new HashMap<>();
        answers.stream()
                .filter(answer -> answer.kind() == Kind.MOVE_IN && answer.said().isVerdict())
                .forEach(answer -> last.put(answer.trap() + " " + answer.onset(), answer));
        List<Answer> cases = new ArrayList<>(answers.stream().distinct().toList());
        cases.removeIf(answer -> !last.containsValue(answer));
        return List.copyOf(cases);
    }
}
