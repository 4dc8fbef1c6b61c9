package org.duskline.collector.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The published values beside the tests; where each comes from stands in the folder's README. */
public final class Published {
    private Published() {}

    public static JsonNode read(String name) {
        try (InputStream file = Published.class.getResourceAsStream("/published/" + name)) {
            return new ObjectMapper().readTree(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
