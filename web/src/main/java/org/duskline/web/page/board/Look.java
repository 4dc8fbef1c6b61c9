package org.duskline.web.page.board;

import java.util.Optional;
import org.duskline.analyzer.finding.Finding;

/**
 * What else needs a look: not to be closed, not to be forgotten.
 *
 * @param trap the trap's name
 * @param finding what stands there; empty for a chore that is due
 * @param what what is seen there, in one sentence
 */
public record Look(String trap, Optional<Finding> finding, String what) {
    static Look at(Finding finding) {
        return new Look(finding.trap(), Optional.of(finding), finding.summary());
    }
}
