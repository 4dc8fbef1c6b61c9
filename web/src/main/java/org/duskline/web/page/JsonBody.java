package org.duskline.web.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.Context;
import java.util.Optional;

/** The one JSON object that a program sends. */
final class JsonBody {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final JsonNode object;

    private JsonBody(JsonNode object) {
        this.object = object;
    }

    /**
     * Reads it.
     *
     * @throws BadRequest when the body is anything else
     */
    static JsonBody of(Context context) {
        try {
            JsonNode body = JSON.readTree(context.body());
            if (body != null && body.isObject()) {
                return new JsonBody(body);
            }
        } catch (JsonProcessingException unreadable) {
            throw new BadRequest("The body is no JSON: " + unreadable.getOriginalMessage() + ".");
        }
        throw new BadRequest("The body has to be one JSON object.");
    }

    /** A field's text; null, a list, an object and blank text are no field. */
    Optional<String> text(String name) {
        return Optional.ofNullable(object.get(name))
                .filter(node -> node.isValueNode() && !node.isNull())
                .map(JsonNode::asText)
                .map(String::strip)
                .filter(text -> !text.isEmpty());
    }
}
