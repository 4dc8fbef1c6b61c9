package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Stretch;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.store.Store;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.Watchboard;

/**
 * Why was nothing told? Says for any stretch at a trap how near it came to each kind of finding. Only reads; one question
 * at a time, because each folds sixteen days of the line.
 */
public final class WhyPages implements Part {
    private static final Duration USUAL = Duration.ofDays(1);

    /** Some seconds' work on a small machine. */
    private static final long MOST_MESSAGES = 600_000;

    private final Watchboard board;
    private final PageViews views;
    private final Store store;
    private final FindingLog findings;
    private final ThresholdBook book;
    private final ReentrantLock oneAtATime = new ReentrantLock(true);

    /**
     * @param store where the line's readings are kept
     * @param book whose thresholds judge
     */
    public WhyPages(Watchboard board, Store store, FindingLog findings, ThresholdBook book) {
        this.board = board;
        this.views = new PageViews(board);
        this.store = store;
        this.findings = findings;
        this.book = book;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/traps/{trap}/why", this::page);
        routes.get("/api/traps/{trap}/why", this::api);
    }

    private record Asked(TrapDetail detail, Instant from, Instant until) {
        String trap() {
            return detail.trap().name();
        }
    }

    private Asked asked(Context context) {
        TrapDetail detail = Routes.find(board, context.pathParam("trap"));
        ZoneId zone = detail.trap().trap().zone();
        Optional<String> from = Optional.ofNullable(context.queryParam("from"));
        Optional<String> until = Optional.ofNullable(context.queryParam("until"));
        Instant end = until.map(text -> moment("until", text, zone)).orElse(detail.now());
        return new Asked(detail, from.map(text -> moment("from", text, zone)).orElse(end.minus(USUAL)), end);
    }

    /** With its offset, or as a field of a page has it: by the trap's clock. */
    private static Instant moment(String parameter, String text, ZoneId zone) {
        try {
            return LocalDateTime.parse(text).atZone(zone).toInstant();
        } catch (DateTimeException notByTheClock) {
            return ViewSpan.time(parameter, text);
        }
    }

    private List<Nearest> nearest(Asked asked) {
        Stretch stretch = new Stretch(asked.from(), asked.until());
        long messages = stretch.messages(store);
        if (messages > MOST_MESSAGES) {
            throw new IllegalArgumentException(String.format(
                    "%,d messages of the line bear on it, too many for a page. Ask on the machine itself: duskline why --trap \"%s\" --from %s --to %s",
                    messages, asked.trap(), asked.from(), asked.until()));
        }
        oneAtATime.lock();
        try {
            return stretch.nearest(store, book, asked.detail().now(), findings, asked.trap(), done -> {});
        } finally {
            oneAtATime.unlock();
        }
    }

    private void page(Context context) {
        Asked asked = asked(context);
        try {
            List<Nearest> nearest = nearest(asked);
            render(context, asked, nearest, views.strip(asked.detail().trap().trap(), asked.from(), asked.until()), "");
        } catch (IllegalArgumentException refused) {
            context.status(400);
            render(context, asked, List.of(), Strip.NONE, refused.getMessage());
        }
    }

    private static void render(Context context, Asked asked, List<Nearest> nearest, Strip strip, String complaint) {
        List<Finding> told = asked.detail().findings().stream()
                .filter(finding -> !finding.raised().isBefore(asked.from())
                        && finding.raised().isBefore(asked.until()))
                .toList();
        WhyView view = new WhyView(
                asked.detail().trap().trap(),
                asked.detail().now(),
                asked.from(),
                asked.until(),
                nearest,
                told,
                strip,
                complaint);
        Shell shell = new Shell(
                asked.trap() + ": how near it came",
                "line",
                asked.detail().now(),
                Optional.of(asked.detail().link()));
        context.header("Cache-Control", "no-cache").render("why.jte", Map.of("shell", shell, "view", view));
    }

    private void api(Context context) {
        Asked asked = asked(context);
        try {
            Map<String, Object> shape = new LinkedHashMap<>();
            shape.put("trap", asked.trap());
            shape.put("from", asked.from().toString());
            shape.put("until", asked.until().toString());
            shape.put("nearest", nearest(asked).stream().map(WhyPages::shape).toList());
            context.header("Cache-Control", "no-cache").json(shape);
        } catch (IllegalArgumentException refused) {
            throw new BadRequest(refused.getMessage());
        }
    }

    /** What was not weighed has neither moment nor odds. */
    private static Map<String, Object> shape(Nearest one) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("kind", one.kind().wireName());
        one.at().ifPresent(at -> {
            shape.put("at", at.toString());
            shape.put("odds", one.odds());
        });
        shape.put("needed", one.needed());
        shape.put("heldBack", one.heldBack());
        shape.put("evidence", one.evidence());
        return shape;
    }
}
