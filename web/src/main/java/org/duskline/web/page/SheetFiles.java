package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.function.Function;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.SheetCalendar;
import org.duskline.analyzer.evening.SheetCsv;
import org.duskline.analyzer.evening.SheetGpx;
import org.duskline.analyzer.evening.SheetText;
import org.duskline.web.page.board.Habits;
import org.duskline.web.page.board.Watchboard;

/** Tonight's sheet for calendars, navigation, spreadsheets and terminals. */
public final class SheetFiles implements Part {
    private final Watchboard board;
    private final Habits habits;

    public SheetFiles(Watchboard board, Habits habits) {
        this.board = board;
        this.habits = habits;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/api/tonight.ics", context -> calendar(context, "attachment"));
        routes.get("/feeds/{token}/evening.ics", context -> calendar(context, "inline"));
        routes.get(
                "/api/tonight.gpx",
                context -> file(
                        context,
                        "gpx",
                        "application/gpx+xml",
                        "attachment",
                        sheet -> SheetGpx.of(sheet, habits.round().home())));
        routes.get(
                "/api/tonight.csv",
                context -> file(context, "csv", "text/csv; charset=utf-8; header=present", "attachment", SheetCsv::of));
        routes.get(
                "/api/tonight.txt",
                context -> file(context, "txt", "text/plain; charset=utf-8", "inline", SheetText::of));
    }

    private void calendar(Context context, String disposition) {
        file(
                context,
                "ics",
                "text/calendar; charset=utf-8",
                disposition,
                sheet -> SheetCalendar.of(List.of(sheet), habits.lead()));
    }

    private void file(
            Context context, String ending, String type, String disposition, Function<EveningSheet, String> writer) {
        EveningSheet sheet = board.tonight().sheet();
        context.header("Cache-Control", "no-cache")
                .header(
                        "Content-Disposition",
                        disposition + "; filename=\"evening-" + sheet.evening() + "." + ending + "\"")
                .contentType(type)
                .result(writer.apply(sheet));
    }
}
