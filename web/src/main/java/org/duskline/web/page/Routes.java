package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.Watchboard;

/** All routes of the pages, and what is answered when something goes wrong. The API's stand in {@link Api}. */
final class Routes {
    private final Watchboard board;
    private final InstantSource clock;
    private final LiveFeed feed;
    private final PageViews views;
    private final Gate gate;
    private final List<Part> parts;

    Routes(Watchboard board, Entrance entrance, InstantSource clock, LiveFeed feed, List<Part> further) {
        this.board = board;
        this.clock = clock;
        this.feed = feed;
        this.views = new PageViews(board);
        this.gate = new Gate(entrance);
        List<Part> all = new ArrayList<>(further);
        all.add(new ClosingPage(board));
        all.add(new Offline());
        all.add(new WaysIn(gate, entrance.door(), clock));
        this.parts = List.copyOf(all);
    }

    void register(RoutesConfig routes) {
        routes.before(Headers::set);
        routes.before(gate::check);
        routes.get("/", this::tonight);
        routes.get("/line", this::line);
        routes.get("/traps/{trap}", this::trap);
        routes.get("/alerts", this::alerts);
        routes.sse("/live", feed::connect);
        new Api(board, views, clock).register(routes);
        parts.forEach(part -> part.register(routes));
        new Troubles(clock).register(routes);
    }

    private void tonight(Context context) {
        TonightView view = views.tonight();
        Shell shell = new Shell(
                view.headline(),
                "tonight",
                view.tonight().now(),
                Optional.of(view.tonight().link()));
        render(context, "tonight", shell, view);
    }

    private void line(Context context) {
        LineView view = views.line();
        Shell shell = new Shell(
                "The line", "line", view.line().now(), Optional.of(view.line().link()));
        render(context, "line", shell, view);
    }

    private void alerts(Context context) {
        AlertsView view = views.alerts(clock.instant(), context.queryParam("all") != null);
        Shell shell = new Shell(
                "Alerts", "alerts", view.line().now(), Optional.of(view.line().link()));
        render(context, "alerts", shell, view);
    }

    private void trap(Context context) {
        TrapDetail detail = find(board, context.pathParam("trap"));
        ViewSpan span = ViewSpan.read(
                context.queryParam("from"),
                context.queryParam("until"),
                context.queryParam("span"),
                detail.recordedFrom(),
                detail.now());
        TrapView view = views.trap(span, detail, context.queryParam("beside"));
        Shell shell = new Shell(detail.trap().name(), "line", detail.now(), Optional.of(detail.link()));
        render(context, "trap", shell, view);
    }

    static TrapDetail find(Watchboard board, String segment) {
        return named(board, TrapAddress.nameIn(segment));
    }

    static TrapDetail named(Watchboard board, String name) {
        return board.trap(name).orElseThrow(() -> new NotHere("The line has no trap named \"" + name + "\"."));
    }

    /** A whole page, or only its changing part when an open page asks for news of itself. */
    static void render(Context context, String template, Shell shell, Object view) {
        context.header("Cache-Control", "no-cache")
                .header("Vary", "HX-Request")
                .header("Duskline-Now", shell.now().toString());
        if ("true".equals(context.header("HX-Request"))) {
            context.render("part/" + template + ".jte", Map.of("shell", shell, "view", view));
        } else {
            context.render(template + ".jte", Map.of("shell", shell, "view", view));
        }
    }
}
