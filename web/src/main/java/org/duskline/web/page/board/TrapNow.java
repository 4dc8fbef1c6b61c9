package org.duskline.web.page.board;

import java.time.Instant;
import java.util.Optional;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;

/**
 * One trap as it is now. What was not measured is NaN.
 *
 * @param trap where it hangs
 * @param fitted what its node senses
 * @param node the node that hangs there now; empty when none does
 * @param condition how it is
 * @param lastHeard receipt of its last message; empty when it was never heard
 * @param measured time of the last sample, by which the numbers below must be judged; empty when it was never heard
 * @param weightKg last weight
 * @param inPerMinute last traffic inward
 * @param outPerMinute last traffic outward
 * @param boxCelsius last temperature inside
 * @param cellCelsius last temperature at the load cell
 * @param batteryVolts last battery voltage
 * @param standing the weightiest finding that still stands
 */
public record TrapNow(
        Trap trap,
        Fitted fitted,
        Optional<String> node,
        Condition condition,
        Optional<Instant> lastHeard,
        Optional<Instant> measured,
        double weightKg,
        double inPerMinute,
        double outPerMinute,
        double boxCelsius,
        double cellCelsius,
        double batteryVolts,
        Optional<Finding> standing) {

    public String name() {
        return trap.name();
    }
}
