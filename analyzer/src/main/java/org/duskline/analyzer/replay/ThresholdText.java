package org.duskline.analyzer.replay;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;

/** Thresholds as JSON: {@code {"moveInOdds": 40}}. What is not named stays as it was. */
public final class ThresholdText {
    private static final ObjectMapper JSON = new ObjectMapper();

    private ThresholdText() {}

    /**
     * Reads thresholds.
     *
     * @param base for what the text does not name
     * @throws IllegalArgumentException in words for the keeper, if a name or a number is not possible
     */
    public static Thresholds read(String text, Thresholds base) {
        ObjectNode whole = JSON.valueToTree(base);
        try {
            JsonNode named = JSON.readTree(text);
            if (!named.isObject()) {
                throw new IllegalArgumentException("Thresholds are a JSON object, such as {\"moveInOdds\": 40}.");
            }
            named.properties().forEach(field -> {
                if (!whole.has(field.getKey()) || !field.getValue().isNumber()) {
                    throw new IllegalArgumentException("\"" + field.getKey()
                            + "\" is no threshold with a number. There are: " + names(whole) + ".");
                }
                whole.set(field.getKey(), field.getValue());
            });
            return JSON.treeToValue(whole, Thresholds.class);
        } catch (JsonProcessingException broken) {
            Throwable cause = broken.getCause();
            throw new IllegalArgumentException(
                    cause instanceof IllegalArgumentException
                            ? cause.getMessage()
                            : "The thresholds are no readable JSON: " + broken.getOriginalMessage(),
                    broken);
        }
    }

    private static String names(ObjectNode whole) {
        List<String> names = new ArrayList<>();
        whole.fieldNames().forEachRemaining(names::add);
        return String.join(", ", names);
    }

    public static String write(Thresholds thresholds) {
        return JSON.valueToTree(thresholds).toString();
    }

    /** The same thresholds with one of them changed. */
    static Thresholds with(Thresholds thresholds, String key, double value) {
        return read(JSON.createObjectNode().put(key, value).toString(), thresholds);
    }

    /** What differs, in words such as {@code Smallest swarm worth a drive: 0.25 kg, now 0.40 kg}; empty if nothing. */
    public static List<String> difference(Thresholds before, Thresholds after) {
        ObjectNode old = JSON.valueToTree(before);
        ObjectNode fresh = JSON.valueToTree(after);
        List<String> differences = new ArrayList<>();
        old.properties().forEach(field -> {
            JsonNode other = fresh.get(field.getKey());
            if (!other.equals(field.getValue())) {
                differences.add(Dial.ofKey(field.getKey())
                        .map(dial -> dial.label() + ": "
                                + dial.said(field.getValue().asDouble()) + ", now " + dial.said(other.asDouble()))
                        .orElse(field.getKey() + ": " + field.getValue() + ", now " + other));
            }
        });
        return differences;
    }
}
