package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.replay.Dial;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.TrapNow;
import org.duskline.web.page.board.Watchboard;
import org.duskline.web.tuning.TuningDesk;

/** Trying other thresholds, adopting them, and going back. What runs in the background is in {@link TuningFeed}. */
public final class TuningPages implements Part {
    private static final int USUAL_EXCEPTION_DAYS = 30;

    private final Watchboard board;
    private final PageViews views;
    private final FindingLog findings;
    private final AnswerLog answers;
    private final ThresholdBook book;
    private final TuningDesk desk;
    private final InstantSource clock;

    /**
     * @param board the line as the pages show it
     * @param book where adopted thresholds are kept
     * @param desk where they are tried
     */
    public TuningPages(
            Watchboard board,
            FindingLog findings,
            AnswerLog answers,
            ThresholdBook book,
            TuningDesk desk,
            InstantSource clock) {
        this.board = board;
        this.views = new PageViews(board);
        this.findings = findings;
        this.answers = answers;
        this.book = book;
        this.desk = desk;
        this.clock = clock;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/tuning", context -> page(context, 200, ""));
        routes.post("/tuning/adopt", this::adopt);
        routes.post("/tuning/back", this::back);
        new TuningFeed(findings, book, desk, clock).register(routes);
        new TuningApi(findings, answers, book, desk, clock).register(routes);
    }

    private void page(Context context, int status, String complaint) {
        desk.warmUp();
        LineOverview line = board.line();
        Instant now = line.now();
        Optional<TuningView.Loaded> loaded = asked(context, "finding").map(this::loaded);
        Optional<String> trap = asked(context, "trap").map(name -> known(line, name));
        TuningView view = new TuningView(
                now,
                zone(line, loaded.map(one -> one.finding().trap()).or(() -> trap)),
                loaded,
                line.traps().stream().map(one -> one.trap().name()).toList(),
                trap,
                turns(trap, now),
                versions(now),
                (int) answers.between(Instant.EPOCH, now).stream()
                        .filter(answer -> answer.said().isVerdict())
                        .count(),
                LocalDate.ofInstant(now, ZoneOffset.UTC).plusDays(USUAL_EXCEPTION_DAYS),
                complaint);
        Shell shell = new Shell("Tuning", "more", now, Optional.of(line.link()));
        context.status(status)
                .header("Cache-Control", "no-store")
                .render("tuning.jte", Map.of("shell", shell, "view", view));
    }

    private TuningView.Loaded loaded(String name) {
        Finding finding = FindingAddress.find(findings, name);
        return new TuningView.Loaded(
                finding,
                views.stripAround(finding, clock.instant()),
                answers.verdict(finding.trap(), finding.kind(), finding.onset()),
                UUID.randomUUID().toString());
    }

    private static ZoneId zone(LineOverview line, Optional<String> trap) {
        return line.traps().stream()
                .map(TrapNow::trap)
                .filter(one -> trap.isEmpty() || one.name().equals(trap.get()))
                .findFirst()
                .map(one -> one.zone())
                .orElse(ZoneOffset.UTC);
    }

    private static String known(LineOverview line, String name) {
        return line.traps().stream()
                .map(one -> one.trap().name())
                .filter(name::equals)
                .findFirst()
                .orElseThrow(() -> new NotHere("The line has no trap named \"" + name + "\"."));
    }

    private List<TuningView.Turn> turns(Optional<String> trap, Instant now) {
        Thresholds holds = trap.map(name -> book.inForce(name, now).thresholds())
                .orElseGet(() -> book.ofLine(now).thresholds());
        return Arrays.stream(Dial.values())
                .map(dial -> new TuningView.Turn(dial, dial.of(holds)))
                .toList();
    }

    private List<TuningView.Version> versions(Instant now) {
        List<TuningView.Version> versions = new ArrayList<>();
        for (Adopted adopted : book.versions()) {
            boolean holds = adopted.trap()
                    .map(name ->
                            book.exception(name, now).filter(adopted::equals).isPresent())
                    .orElseGet(() -> book.ofLine(now).equals(adopted));
            versions.add(0, new TuningView.Version(adopted, book.effect(adopted.version(), findings, answers), holds));
        }
        return versions;
    }

    private void adopt(Context context) {
        Optional<String> trap = asked(context, "trap").map(name -> known(board.line(), name));
        Instant now = clock.instant();
        Thresholds base = trap.map(name -> book.inForce(name, now).thresholds())
                .orElseGet(() -> book.ofLine(now).thresholds());
        Thresholds wished = Turned.read(context, base);
        try {
            String foretold = desk.foretold(wished, trap).orElse("");
            String by = Visitor.of(context).name();
            String why = field(context, "why");
            if (trap.isPresent()) {
                book.except(trap.get(), wished, now, end(context, trap.get()), by, why, foretold);
            } else {
                book.adopt(wished, now, by, why, foretold);
            }
            context.redirect("/tuning#history", HttpStatus.SEE_OTHER);
        } catch (IllegalArgumentException refused) {
            page(context, 400, refused.getMessage());
        }
    }

    private Instant end(Context context, String trap) {
        try {
            return LocalDate.parse(field(context, "until"))
                    .plusDays(1)
                    .atStartOfDay(zone(board.line(), Optional.of(trap)))
                    .toInstant();
        } catch (DateTimeParseException notADay) {
            throw new IllegalArgumentException("Say until which day the exception holds, like 2026-06-30.", notADay);
        }
    }

    private void back(Context context) {
        try {
            int version = Integer.parseInt(field(context, "version"));
            book.goBack(version, clock.instant(), Visitor.of(context).name(), field(context, "why"));
            context.redirect("/tuning#history", HttpStatus.SEE_OTHER);
        } catch (IllegalArgumentException refused) {
            page(context, 400, refused.getMessage());
        }
    }

    private static Optional<String> asked(Context context, String name) {
        return Optional.ofNullable(context.queryParam(name))
                .or(() -> Optional.ofNullable(context.formParam(name)))
                .filter(text -> !text.isBlank());
    }

    private static String field(Context context, String name) {
        return Optional.ofNullable(context.formParam(name)).orElse("").strip();
    }
}
