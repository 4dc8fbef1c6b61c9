package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.Answer;

/** Answers for programs, and for phones that kept some until they had reception. Described by {@code openapi.json}. */
final class AnswerApi {
    private final FindingLog findings;
    private final Answering answering;
    private final InstantSource clock;

    AnswerApi(FindingLog findings, Answering answering, InstantSource clock) {
        this.findings = findings;
        this.answering = answering;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/answers", this::given);
        routes.post("/api/answers", this::answer);
    }

    private void given(Context context) {
        String name = Optional.ofNullable(context.queryParam("finding")).orElse("");
        json(context, FindingAddress.find(findings, name));
    }

    private void answer(Context context) {
        JsonBody body = JsonBody.of(context);
        Finding finding = FindingAddress.find(findings, body.text("finding").orElse(""));
        Instant now = clock.instant();
        AnswerEntry entry = AnswerEntry.read(body::text, finding.kind(), now);
        boolean fresh = answering.write(finding, entry, Visitor.of(context).name(), now);
        context.appData(Pages.NEWS).accept(new News.SheetChanged());
        context.status(fresh ? HttpStatus.CREATED : HttpStatus.OK);
        json(context, finding);
    }

    private void json(Context context, Finding finding) {
        List<Map<String, Object>> shapes =
                answering.given(finding).stream().map(AnswerApi::shape).toList();
        context.header("Cache-Control", "no-cache").json(shapes);
    }

    static Map<String, Object> shape(Answer answer) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("said", answer.said().wireName());
        shape.put("note", answer.note());
        shape.put("at", answer.at().toString());
        shape.put("by", answer.by());
        return shape;
    }
}
