package org.duskline.web.page;

import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;

/** The one line with which an open page tells a finding at once. */
final class Told {
    private Told() {}

    static String html(Finding finding) {
        String what = finding.stage() == Stage.RAISED
                ? Words.kind(finding.kind())
                : Words.kind(finding.kind()) + ": " + Words.stage(finding.stage());
        return "<a href=\"" + escape(Links.curveAround(finding)) + "\"><strong>" + escape(finding.trap()) + "</strong> "
                + escape(what) + "</a>";
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
