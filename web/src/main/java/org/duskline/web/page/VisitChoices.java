package org.duskline.web.page;

import java.util.Arrays;
import java.util.List;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.visit.VisitKind;

/**
 * What a keeper may write down, the likely first, so that two taps do.
 *
 * @param likely what is probably done next at a trap in that condition
 * @param others everything else
 */
public record VisitChoices(List<VisitKind> likely, List<VisitKind> others) {
    /** The choices at a trap in a condition. */
    public static VisitChoices in(Condition condition) {
        List<VisitKind> likely = switch (condition) {
            case FILLING, OCCUPIED -> List.of(VisitKind.CLOSED, VisitKind.LOOKED, VisitKind.COLLECTED);
            case CLOSED -> List.of(VisitKind.COLLECTED, VisitKind.OPENED, VisitKind.LOOKED);
            case COLLECTED -> List.of(VisitKind.REHUNG, VisitKind.TAKEN_DOWN);
            case QUIET, SCOUTED, ROBBED, DISTURBED, UNHEARD, FAULTY ->
                List.of(VisitKind.LOOKED, VisitKind.BAITED, VisitKind.SET);
        };
        return new VisitChoices(
                likely,
                Arrays.stream(VisitKind.values())
                        .filter(kind -> !likely.contains(kind))
                        .toList());
    }
}
