package org.duskline.analyzer.prove;

import java.util.List;
import org.duskline.analyzer.detect.Forecast;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.season.Truth;

/**
 * What was foretold when scouts were told, and what came.
 *
 * @param within24Hours whether a swarm came within a day
 * @param within48Hours whether one came within two days
 */
record Outcome(Forecast said, boolean within24Hours, boolean within48Hours) {
    private static final double DAY = 86400;

    static List<Outcome> of(List<Watching.Foretold> forecasts, Truth truth) {
        return forecasts.stream()
                .map(foretold ->
                        new Outcome(foretold.forecast(), came(foretold, truth, DAY), came(foretold, truth, 2 * DAY)))
                .toList();
    }

    private static boolean came(Watching.Foretold foretold, Truth truth, double within) {
        double at = foretold.at().toEpochMilli() / 1000.0;
        return truth.traps().stream()
                .filter(trap -> trap.trap().equals(foretold.trap()))
                .map(TrapTruth::arrivals)
                .flatMap(List::stream)
                .anyMatch(arrival -> arrival.start() >= at && arrival.start() < at + within);
    }
}
