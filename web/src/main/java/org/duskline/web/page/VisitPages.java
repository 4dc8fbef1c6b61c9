package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.VisitView.Filled;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.Watchboard;

/** Visits written down on a phone in two taps, and corrected with their history kept. Programs go by {@link VisitApi}. */
public final class VisitPages implements Part {
    private final Watchboard board;
    private final VisitLog visits;
    private final InstantSource clock;

    public VisitPages(Watchboard board, VisitLog visits, InstantSource clock) {
        this.board = board;
        this.visits = visits;
        this.clock = clock;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/traps/{trap}/visits/new", this::blank);
        routes.post("/traps/{trap}/visits", this::write);
        routes.get("/visits/{visit}", this::written);
        routes.post("/visits/{visit}", this::correct);
        routes.post("/visits/{visit}/strike", this::strike);
        new VisitApi(board, visits, clock).register(routes);
    }

    private void blank(Context context) {
        Trap trap = trap(context.pathParam("trap"));
        VisitKind kind = VisitEntry.kind(text(context, "what"));
        show(context, view(trap, kind, Filled.NOTHING, List.of(), ""));
    }

    private void write(Context context) {
        Trap trap = trap(context.pathParam("trap"));
        try {
            VisitEntry entry = entry(context, trap);
            long number = visits.record(entry.visit(), clock.instant(), entry.mark());
            told(context);
            context.redirect("/visits/" + number, HttpStatus.SEE_OTHER);
        } catch (BadRequest wrong) {
            complain(context, trap, VisitEntry.kind(text(context, "what")), List.of(), wrong);
        }
    }

    private void written(Context context) {
        List<KeptVisit> history = history(visits, context.pathParam("visit"));
        KeptVisit latest = history.get(history.size() - 1);
        Trap trap = named(latest);
        show(context, view(trap, latest.visit().kind(), Filled.of(latest.visit(), trap), history, ""));
    }

    private void correct(Context context) {
        List<KeptVisit> history = history(visits, context.pathParam("visit"));
        KeptVisit first = history.get(0);
        Trap trap = named(first);
        try {
            VisitEntry entry = entry(context, trap);
            visits.correct(
                    first.id(),
                    entry.visit(),
                    clock.instant(),
                    Visitor.of(context).name());
            told(context);
            context.redirect("/visits/" + first.id(), HttpStatus.SEE_OTHER);
        } catch (BadRequest wrong) {
            complain(context, trap, first.visit().kind(), history, wrong);
        }
    }

    private void strike(Context context) {
        KeptVisit visit = history(visits, context.pathParam("visit")).get(0);
        visits.strike(visit.id(), clock.instant(), Visitor.of(context).name());
        told(context);
        context.redirect("/visits/" + visit.id(), HttpStatus.SEE_OTHER);
    }

    private VisitEntry entry(Context context, Trap trap) {
        return VisitEntry.read(
                name -> Optional.of(text(context, name)).filter(text -> !text.isEmpty()),
                trap,
                Visitor.of(context).name(),
                clock.instant());
    }

    private void complain(Context context, Trap trap, VisitKind kind, List<KeptVisit> history, BadRequest wrong) {
        Filled filled = new Filled(
                text(context, "at"), text(context, "massKg"), text(context, "whereTo"), text(context, "note"));
        context.status(HttpStatus.BAD_REQUEST);
        show(context, view(trap, kind, filled, history, wrong.getMessage()));
    }

    private VisitView view(Trap trap, VisitKind kind, Filled filled, List<KeptVisit> history, String complaint) {
        return new VisitView(trap, kind, filled, UUID.randomUUID().toString(), history, complaint, clock.instant());
    }

    private void show(Context context, VisitView view) {
        Shell shell = new Shell(view.title() + ", " + view.trap().name(), "line", view.now(), Optional.empty());
        context.header("Cache-Control", "no-cache").render("visit.jte", Map.of("shell", shell, "view", view));
    }

    private Trap trap(String segment) {
        TrapDetail detail = Routes.find(board, segment);
        return detail.trap().trap();
    }

    private Trap named(KeptVisit visit) {
        return Routes.named(board, visit.visit().trap()).trap().trap();
    }

    /** Every edition of the visit with that number. */
    static List<KeptVisit> history(VisitLog visits, String number) {
        List<KeptVisit> history = number.matches("\\d{1,15}") ? visits.history(Long.parseLong(number)) : List.of();
        if (history.isEmpty()) {
            throw new NotHere("There is no visit number " + number + ".");
        }
        return history;
    }

    /** Open pages show it at once. */
    static void told(Context context) {
        context.appData(Pages.NEWS).accept(new News.SheetChanged());
    }

    private static String text(Context context, String field) {
        return Optional.ofNullable(context.formParam(field))
                .or(() -> Optional.ofNullable(context.queryParam(field)))
                .map(String::strip)
                .orElse("");
    }
}
