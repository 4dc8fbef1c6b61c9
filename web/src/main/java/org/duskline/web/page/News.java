package org.duskline.web.page;

import org.duskline.analyzer.finding.Finding;

/** What has happened that somebody looking at a page should see without asking again. */
public sealed interface News {
    /** New samples of a trap are stored. */
    record Heard(String trap) implements News {}

    /** A finding was raised or changed. */
    record Found(Finding finding) implements News {}

    /** The broker came or went. */
    record LinkChanged() implements News {}

    /** The evening sheet, a fitting or a visit changed. */
    record SheetChanged() implements News {}
}
