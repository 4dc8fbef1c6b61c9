package org.duskline.web.deliver;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.Map;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.SwarmSize;

/** A finding as one JSON object, for other programs; times by RFC 3339 in UTC. */
public final class FindingJson {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PROBABILITY_DIGITS = 4;
    private static final int WEIGHT_DIGITS = 3;

    private FindingJson() {}

    /** The object on one line. */
    public static String text(Finding finding) {
        try {
            return JSON.writeValueAsString(object(finding));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A tree of plain values could not be written.", e);
        }
    }

    private static ObjectNode object(Finding finding) {
        ObjectNode object = JSON.createObjectNode()
                .put("trap", finding.trap())
                .put("node", finding.node())
                .put("kind", finding.kind().wireName())
                .put("onset", finding.onset().toString())
                .put("raised", finding.raised().toString())
                .put("stage", finding.stage().wireName())
                .put("changed", finding.changed().toString());
        put(object, "probability", finding.probability(), PROBABILITY_DIGITS);
        object.put("summary", finding.summary());
        ArrayNode evidence = object.putArray("evidence");
        for (Evidence piece : finding.evidence()) {
            put(evidence.addObject().put("said", piece.said()), "logOdds", piece.logOdds(), WEIGHT_DIGITS);
        }
        ObjectNode rivals = object.putObject("rivals");
        finding.rivals().entrySet().stream()
                .sorted(Map.Entry.<Rival, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .forEach(rival -> put(rivals, rival.getKey().wireName(), rival.getValue(), PROBABILITY_DIGITS));
        finding.size().ifPresent(size -> size(object.putObject("size"), size));
        return object.put("thresholds", finding.thresholds());
    }

    private static void size(ObjectNode object, SwarmSize size) {
        put(object, "kg", size.kg(), WEIGHT_DIGITS);
        put(object, "lowKg", size.lowKg(), WEIGHT_DIGITS);
        put(object, "highKg", size.highKg(), WEIGHT_DIGITS);
        object.put("bees", size.bees());
    }

    /** JSON has no way to write what was not measured: it is left out. */
    private static void put(ObjectNode object, String key, double value, int digits) {
        if (Double.isFinite(value)) {
            object.put(key, BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_EVEN));
        }
    }
}
