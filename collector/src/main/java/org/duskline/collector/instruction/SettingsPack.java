package org.duskline.collector.instruction;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.time.Instant;

/** Writes settings as the SenML pack (RFC 8428 section 5) that nodes read: flat records, no base fields. */
final class SettingsPack {
    private static final ObjectMapper JSON = new ObjectMapper();

    private SettingsPack() {}

    /** @param now goes with it as the time; a node believes it only if it comes straight from us */
    static byte[] write(Instruction told, Instant now) {
        ArrayNode pack = JSON.createArrayNode();
        number(pack, "rev", "count", told.revision());
        number(pack, "period", "s", told.settings().periodSeconds());
        number(pack, "quick-period", "s", told.settings().quickPeriodSeconds());
        pack.addObject().put("n", "quick").put("vs", told.settings().quick().wireName());
        number(pack, "tare", "count", told.settings().tare());
        number(pack, "time", "s", now.getEpochSecond());
        try {
            return JSON.writeValueAsBytes(pack);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("A tree of plain values could not be written.", impossible);
        }
    }

    private static void number(ArrayNode pack, String name, String unit, long value) {
        pack.addObject().put("n", name).put("u", unit).put("v", value);
    }
}
