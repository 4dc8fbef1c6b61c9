package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.Watchboard;
import org.duskline.web.picture.CurvePicture;

/** The story of one finding: as a page, for programs, and as plain text. Only reads. */
public final class StoryPages implements Part {
    private final Watchboard board;
    private final PageViews views;
    private final FindingLog findings;
    private final AnswerLog answers;
    private final ThresholdBook book;
    private final InstantSource clock;

    /** @param book where the thresholds that a finding was raised under are looked up */
    public StoryPages(
            Watchboard board, FindingLog findings, AnswerLog answers, ThresholdBook book, InstantSource clock) {
        this.board = board;
        this.views = new PageViews(board);
        this.findings = findings;
        this.answers = answers;
        this.book = book;
        this.clock = clock;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/story", this::page);
        routes.get("/story.png", this::picture);
        routes.get(
                "/api/story",
                context -> context.header("Cache-Control", "no-cache").json(shape(story(context))));
        routes.get(
                "/api/story.txt",
                context -> context.header("Cache-Control", "no-cache")
                        .contentType("text/plain; charset=utf-8")
                        .result(StoryText.of(story(context))));
    }

    private void page(Context context) {
        StoryView story = story(context);
        String title =
                story.finding().trap() + ", " + Words.kind(story.finding().kind());
        Routes.render(context, "findingstory", new Shell(title, "alerts", story.now(), Optional.empty()), story);
    }

    /** The picture that went with the message, as far as the curve has come since. */
    private void picture(Context context) {
        Finding finding = asked(context);
        TrapDetail detail = Routes.named(board, finding.trap());
        context.header("Cache-Control", "no-cache")
                .contentType("image/png")
                .result(CurvePicture.png(board, detail.trap().trap(), finding.onset(), clock.instant()));
    }

    private Finding asked(Context context) {
        return FindingAddress.find(
                findings, Optional.ofNullable(context.queryParam("finding")).orElse(""));
    }

    private StoryView story(Context context) {
        Finding finding = asked(context);
        TrapDetail detail = Routes.named(board, finding.trap());
        Instant now = clock.instant();
        Optional<Adopted> version = book.version(finding.thresholds());
        List<Passed> passed = version.map(adopted ->
                        Passed.of(finding, adopted.thresholds(), detail.trap().fitted()))
                .orElse(List.of());
        return new StoryView(
                finding,
                detail.trap().trap().zone(),
                now,
                findings.steps(finding.trap(), finding.kind(), finding.onset()),
                passed,
                version,
                answers.to(finding.trap(), finding.kind(), finding.onset()),
                views.stripAround(finding, now));
    }

    private static Map<String, Object> shape(StoryView story) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("finding", ApiShapes.finding(story.finding()));
        shape.put("saidFirst", story.saidFirst());
        shape.put("passed", story.passed());
        story.version()
                .ifPresent(adopted -> shape.put(
                        "version", Map.of("version", adopted.version(), "by", adopted.by(), "why", adopted.why())));
        shape.put(
                "steps",
                story.steps().stream()
                        .map(step -> Map.of(
                                "stage", step.stage().wireName(),
                                "at", step.at().toString(),
                                "summary", step.summary()))
                        .toList());
        shape.put("answers", story.answers().stream().map(AnswerApi::shape).toList());
        return shape;
    }
}
