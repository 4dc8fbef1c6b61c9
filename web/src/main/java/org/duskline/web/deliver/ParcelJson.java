package org.duskline.web.deliver;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** What programs are sent. The same parcel gives the same text at every try. */
final class ParcelJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private ParcelJson() {}

    static String parcel(String id, Channel channel, Parcel parcel, Pictures pictures) {
        ObjectNode object = JSON.createObjectNode()
                .put("id", id)
                .put("made", parcel.made().toString())
                .put("person", channel.person().name())
                .put("title", parcel.title())
                .put("text", parcel.text());
        ArrayNode alerts = object.putArray("alerts");
        for (Alert alert : parcel.alerts()) {
            ObjectNode told = object(alert);
            pictures.address(alert).ifPresent(address -> told.put("picture", address));
            alerts.add(told);
        }
        return text(object);
    }

    static String alert(Alert alert) {
        return text(object(alert));
    }

    private static ObjectNode object(Alert alert) {
        ObjectNode object = JSON.createObjectNode()
                .put("thread", alert.thread())
                .put("step", alert.step())
                .put("title", alert.title())
                .put("written", alert.written().toString());
        alert.trap().ifPresent(trap -> object.put("trap", trap));
        try {
            object.set("finding", JSON.readTree(alert.object()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("Alert " + alert.id() + " holds no JSON object.", e);
        }
        return object;
    }

    private static String text(ObjectNode object) {
        try {
            return JSON.writeValueAsString(object);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A tree of plain values could not be written.", e);
        }
    }
}
