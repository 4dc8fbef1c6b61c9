package org.duskline.web.page;

import java.time.ZoneId;
import java.util.List;
import org.duskline.web.page.board.Answers;
import org.duskline.web.page.board.TrapDetail;

/**
 * The page of one trap.
 *
 * @param detail the trap and its history
 * @param span the stretch looked at
 * @param text the curve in words and rows
 * @param beside what it is set beside
 * @param offered what it can be set beside
 * @param besideWords the curves beside, in words
 * @param answers what was answered to its findings
 */
public record TrapView(
        TrapDetail detail,
        ViewSpan span,
        CurveText text,
        Beside beside,
        List<Beside> offered,
        List<String> besideWords,
        Answers answers) {
    public TrapView {
        offered = List.copyOf(offered);
        besideWords = List.copyOf(besideWords);
    }

    public ZoneId zone() {
        return detail.trap().trap().zone();
    }

    /** Whether a thermometer is fitted; a trap that was never heard may have one. */
    public boolean warmth() {
        return detail.trap().measured().isEmpty()
                || !Double.isNaN(detail.trap().boxCelsius())
                || !Double.isNaN(detail.trap().cellCelsius());
    }

    public String address() {
        return Links.address(detail.trap().name());
    }
}
