package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class SignatureTest {
    /** RFC 4231 section 4, cases 1 to 4, 6 and 7. */
    @Test
    void signatures_are_those_of_rfc_4231() throws IOException {
        try (InputStream file = SignatureTest.class.getResourceAsStream("rfc4231-hmac-sha256.json")) {
            JsonNode vectors = new ObjectMapper().readTree(file);
            assertThat(vectors).hasSize(6);
            for (JsonNode vector : vectors) {
                byte[] key = HexFormat.of().parseHex(vector.path("key_hex").asText());
                byte[] data = HexFormat.of().parseHex(vector.path("data_hex").asText());
                assertThat(HexFormat.of().formatHex(Signature.of(key, data)))
                        .as("case " + vector.path("case").asText())
                        .isEqualTo(vector.path("hmac_sha256_hex").asText());
            }
        }
    }

    @Test
    void a_webhook_signs_time_id_and_body_joined_by_full_stops() {
        String signed = WebhookCarrier.signature("Jefe", "1", "2", "{}");
        assertThat(signed)
                .isEqualTo(HexFormat.of().formatHex(Signature.of("Jefe".getBytes(StandardCharsets.UTF_8), "1.2.{}")))
                .isNotEqualTo(WebhookCarrier.signature("Jefe", "2", "2", "{}"))
                .isNotEqualTo(WebhookCarrier.signature("Jefe", "1", "1", "{}"))
                .isNotEqualTo(WebhookCarrier.signature("Jefe", "1", "2", "[]"));
    }
}
