package org.duskline.analyzer.prove;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.duskline.analyzer.stats.ForecastScore;

/** Whether chances that were foretold came true, beside the chance that is always the same. */
final class ForecastTable {
    private static final int BINS = 10;

    private final List<Outcome> foretold;

    ForecastTable(List<Outcome> foretold) {
        this.foretold = foretold;
    }

    ForecastScore withinADay() {
        return score(outcome -> outcome.said().within24Hours(), Outcome::within24Hours);
    }

    private ForecastScore withinTwoDays() {
        return score(outcome -> outcome.said().within48Hours(), Outcome::within48Hours);
    }

    private ForecastScore score(ToDoubleFunction<Outcome> said, Predicate<Outcome> came) {
        boolean[] outcomes = new boolean[foretold.size()];
        for (int i = 0; i < outcomes.length; i++) {
            outcomes[i] = came.test(foretold.get(i));
        }
        return ForecastScore.of(foretold.stream().mapToDouble(said).toArray(), outcomes, BINS);
    }

    String text() {
        StringBuilder text = new StringBuilder("\nForetold when scouts were told\n");
        add(text, "a swarm within a day", withinADay());
        add(text, "a swarm within two days", withinTwoDays());
        return text.toString();
    }

    private static void add(StringBuilder text, String name, ForecastScore score) {
        double always = score.baseRate() * (1 - score.baseRate());
        text.append(String.format(
                Locale.ROOT,
                "  %s: %d times, came true %.2f; Brier score %.4f, of always saying that %.4f%n",
                name,
                score.forecasts(),
                score.baseRate(),
                score.brier(),
                always));
        for (ForecastScore.Bin bin : score.bins()) {
            text.append(String.format(
                    Locale.ROOT,
                    "    said %3.0f %%, came true %d of %d%n",
                    100 * bin.meanChance(),
                    bin.happened().successes(),
                    bin.happened().trials()));
        }
    }
}
