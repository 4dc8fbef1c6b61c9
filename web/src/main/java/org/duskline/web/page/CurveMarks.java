package org.duskline.web.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.duskline.web.page.board.TrapDetail;

/** The marks that the curve carries, for the script that draws it: findings and visits, each with its moment. */
public final class CurveMarks {
    private static final ObjectMapper JSON = new ObjectMapper();

    private CurveMarks() {}

    public static String json(TrapDetail detail) {
        List<Map<String, Object>> marks = new ArrayList<>();
        detail.findings()
                .forEach(finding -> marks.add(Map.of(
                        "at",
                        finding.onset().getEpochSecond(),
                        "kind",
                        finding.kind().wireName(),
                        "said",
                        Words.kind(finding.kind()),
                        "address",
                        Links.storyPage(finding),
                        "standing",
                        finding.standing())));
        detail.visits()
                .forEach(kept -> marks.add(Map.of(
                        "at",
                        kept.visit().at().getEpochSecond(),
                        "kind",
                        "visit",
                        "said",
                        Words.visit(kept.visit().kind()),
                        "address",
                        "/visits/" + kept.id())));
        try {
            return JSON.writeValueAsString(marks);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(
                    "The marks of trap " + detail.trap().name() + " can't be written.", impossible);
        }
    }
}
