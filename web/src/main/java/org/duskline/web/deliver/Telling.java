package org.duskline.web.deliver;

import java.util.Set;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;

/** What each kind of finding is worth: at any hour, by day, and which of its later steps. */
final class Telling {
    /** They are lost or hurt within hours: bees to be closed before dawn, bees shut into a box that grows hot. */
    private static final Set<Kind> CANNOT_WAIT = Set.of(Kind.MOVE_IN, Kind.OVERHEATING);
    /** Their natural end changes what a keeper does next. */
    private static final Set<Kind> END_MATTERS = Set.of(Kind.MOVE_IN, Kind.OVERHEATING, Kind.LEAKING, Kind.UNHEARD);

    private Telling() {}

    /** Whether it is told at any hour. A withdrawal is: somebody may be on the way. */
    static boolean cannotWait(Finding finding) {
        return CANNOT_WAIT.contains(finding.kind())
                && (finding.stage() == Stage.RAISED || finding.stage() == Stage.WITHDRAWN);
    }

    static boolean worthTelling(Kind kind, Stage later) {
        return switch (later) {
            case RAISED, WITHDRAWN -> true;
            case ARRIVED -> false;
            case STRENGTHENED -> kind == Kind.MOVE_IN;
            case ENDED -> END_MATTERS.contains(kind);
        };
    }

    /** Whether it may be said again at the same trap however soon. A swarm is never held back. */
    static boolean everyTime(Kind kind) {
        return CANNOT_WAIT.contains(kind) || kind == Kind.LEAKING || kind == Kind.GONE;
    }
}
