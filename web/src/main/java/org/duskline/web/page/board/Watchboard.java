package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;

/**
 * The read side of the program as the pages need it. Answers come from what is stored; nothing here changes anything.
 * Called from many threads at once.
 *
 * <p>Every method throws {@link BoardUnavailable} when the stored data can't be read.
 */
public interface Watchboard extends TrapCurves {
    /** The line as it is now: every trap in the order of its name, heard or not. */
    LineOverview line();

    /** Tonight's evening sheet. */
    Tonight tonight();

    /** One trap; empty when the line has none of that name. */
    Optional<TrapDetail> trap(String name);

    /** What somebody sees who stands at a trap now; empty when the line has none of that name. */
    Optional<Doorstep> doorstep(String name);

    /** The findings raised from {@code since} on, the last raised first, at most {@code limit}. */
    List<Finding> findings(Instant since, int limit);

    /** What was answered to these findings. */
    Answers answers(List<Finding> findings);
}
