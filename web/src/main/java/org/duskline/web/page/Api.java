package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.duskline.analyzer.curve.Curve;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.Watchboard;

/** The API beside the pages: the same content for programs. Described by {@code openapi.json}. */
final class Api {
    private static final int USUAL_COLUMNS = 800;
    private static final int MOST_COLUMNS = 2400;
    private static final int MOST_FINDINGS = 1000;
    private static final Duration USUAL_FINDINGS = Duration.ofDays(30);

    private final Watchboard board;
    private final PageViews views;
    private final InstantSource clock;

    Api(Watchboard board, PageViews views, InstantSource clock) {
        this.board = board;
        this.views = views;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/tonight", context -> json(context, ApiShapes.tonight(board.tonight())));
        routes.get("/api/line", context -> json(context, ApiShapes.line(board.line())));
        routes.get("/api/findings", this::findings);
        routes.get("/api/traps/{trap}", this::trap);
        routes.get("/api/traps/{trap}/curve", this::curve);
        routes.get("/api/traps/{trap}/curve.csv", this::curveCsv);
        routes.get("/api/openapi.json", this::description);
    }

    private void trap(Context context) {
        json(context, ApiShapes.trap(Routes.find(board, context.pathParam("trap"))));
    }

    private void findings(Context context) {
        String since = context.queryParam("since");
        Instant from = since == null ? clock.instant().minus(USUAL_FINDINGS) : ViewSpan.time("since", since);
        int limit = number(context, "limit", MOST_FINDINGS, MOST_FINDINGS);
        json(
                context,
                board.findings(from, limit).stream().map(ApiShapes::finding).toList());
    }

    private void curve(Context context) {
        TrapDetail detail = Routes.find(board, context.pathParam("trap"));
        ViewSpan span = span(context, detail);
        int columns = number(context, "columns", USUAL_COLUMNS, MOST_COLUMNS);
        String name = detail.trap().name();
        Curve curve = views.curve(name, span.from(), span.until(), columns);
        context.header("Cache-Control", "no-cache")
                .contentType("application/json")
                .result(CurveJson.write(curve, board.nights(detail.trap().trap(), span.from(), span.until())));
    }

    private void curveCsv(Context context) {
        TrapDetail detail = Routes.find(board, context.pathParam("trap"));
        ViewSpan span = span(context, detail);
        CurveCsv csv = new CurveCsv();
        board.curve(detail.trap().name(), span.from(), span.until(), csv);
        context.header("Cache-Control", "no-cache")
                .header("Content-Disposition", "inline; filename=\"curve.csv\"")
                .contentType("text/csv; charset=utf-8; header=present")
                .result(csv.text());
    }

    private static ViewSpan span(Context context, TrapDetail detail) {
        return ViewSpan.read(
                context.queryParam("from"),
                context.queryParam("until"),
                context.queryParam("span"),
                detail.recordedFrom(),
                detail.now());
    }

    private void description(Context context) {
        try (InputStream description = Api.class.getResourceAsStream("openapi.json")) {
            context.contentType("application/json").result(description.readAllBytes());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static int number(Context context, String parameter, int usual, int most) {
        String text = context.queryParam(parameter);
        if (text == null) {
            return usual;
        }
        if (!text.matches("[0-9]{1,6}") || Integer.parseInt(text) < 1 || Integer.parseInt(text) > most) {
            throw new BadRequest(
                    "\"" + text + "\" in " + parameter + "= is not a whole number from 1 to " + most + ".");
        }
        return Integer.parseInt(text);
    }

    private static void json(Context context, Object content) {
        context.header("Cache-Control", "no-cache").json(content);
    }
}
