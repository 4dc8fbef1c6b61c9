package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.List;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.Watchboard;

/** Visits for programs, and for phones that kept some until they had reception. Described by {@code openapi.json}. */
final class VisitApi {
    private final Watchboard board;
    private final VisitLog visits;
    private final InstantSource clock;

    VisitApi(Watchboard board, VisitLog visits, InstantSource clock) {
        this.board = board;
        this.visits = visits;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/visits", context -> context.json(shapes(visits.all())));
        routes.post("/api/visits", this::write);
        routes.get("/api/visits/{visit}", context -> context.json(shapes(history(context))));
        routes.put("/api/visits/{visit}", this::correct);
        routes.delete("/api/visits/{visit}", this::strike);
    }

    private void write(Context context) {
        JsonBody body = JsonBody.of(context);
        String name = body.text("trap").orElseThrow(() -> new BadRequest("Say at which trap: \"trap\" is missing."));
        VisitEntry entry = entry(context, body, trap(name));
        boolean known = entry.mark().flatMap(visits::marked).isPresent();
        long number = visits.record(entry.visit(), clock.instant(), entry.mark());
        VisitPages.told(context);
        context.status(known ? HttpStatus.OK : HttpStatus.CREATED)
                .header("Location", "/api/visits/" + number)
                .json(ApiShapes.visit(latest(visits.history(number))));
    }

    private void correct(Context context) {
        KeptVisit first = history(context).get(0);
        VisitEntry entry =
                entry(context, JsonBody.of(context), trap(first.visit().trap()));
        visits.correct(
                first.id(), entry.visit(), clock.instant(), Visitor.of(context).name());
        answer(context, first.id());
    }

    private void strike(Context context) {
        KeptVisit first = history(context).get(0);
        visits.strike(first.id(), clock.instant(), Visitor.of(context).name());
        answer(context, first.id());
    }

    private void answer(Context context, long number) {
        VisitPages.told(context);
        context.json(ApiShapes.visit(latest(visits.history(number))));
    }

    private VisitEntry entry(Context context, JsonBody body, Trap trap) {
        return VisitEntry.read(body::text, trap, Visitor.of(context).name(), clock.instant());
    }

    private Trap trap(String name) {
        return Routes.named(board, name).trap().trap();
    }

    private List<KeptVisit> history(Context context) {
        return VisitPages.history(visits, context.pathParam("visit"));
    }

    private static KeptVisit latest(List<KeptVisit> history) {
        return history.get(history.size() - 1);
    }

    private static List<?> shapes(List<KeptVisit> kept) {
        return kept.stream().map(ApiShapes::visit).toList();
    }
}
