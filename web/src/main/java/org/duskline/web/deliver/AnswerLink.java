package org.duskline.web.deliver;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.Base64;
import org.duskline.analyzer.finding.Kind;

/**
 * Issues and checks the text in a link by which somebody answers a finding without signing in. It is signed with
 * HMAC-SHA256, names one person and one finding, and ends at a fixed time. Whoever holds it can answer as that person, and
 * nothing else. Showing a page for it must change nothing; only the page's button may.
 */
public final class AnswerLink {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Base64.Encoder ENCODER = Base64.getUrlEncoder().withoutPadding();
    private static final Base64.Decoder DECODER = Base64.getUrlDecoder();
    private static final int SHORTEST_KEY_BYTES = 32;

    private final byte[] key;

    /** @param key at least 32 random bytes, the same as long as issued links shall hold */
    public AnswerLink(byte[] key) {
        if (key.length < SHORTEST_KEY_BYTES) {
            throw new IllegalArgumentException("The key for links needs " + SHORTEST_KEY_BYTES + " bytes or more.");
        }
        this.key = key.clone();
    }

    /** Who may answer which finding, until when. */
    public record Claim(String person, String trap, Kind kind, Instant onset, Instant ends) {}

    /** What a text turned out to be. */
    public sealed interface Check {
        /** Ours and in time. */
        record Valid(Claim claim) implements Check {}

        /** Ours, but its time is over. */
        record Expired(Claim claim) implements Check {}

        /** Damaged, or not ours. */
        record Foreign() implements Check {}
    }

    /** The text for a link; only letters, digits, {@code -}, {@code _} and {@code .}. */
    public String issue(Claim claim) {
        try {
            byte[] body = JSON.writeValueAsBytes(JSON.createObjectNode()
                    .put("person", claim.person())
                    .put("trap", claim.trap())
                    .put("kind", claim.kind().name())
                    .put("onset", claim.onset().toEpochMilli())
                    .put("ends", claim.ends().toEpochMilli()));
            return ENCODER.encodeToString(body) + "." + ENCODER.encodeToString(Signature.of(key, body));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A tree of plain values could not be written.", e);
        }
    }

    /** Checks a text that came with a link. Nothing in it is believed before its signature is. */
    public Check verify(String text, Instant now) {
        int dot = text.indexOf('.');
        if (dot < 0) {
            return new Check.Foreign();
        }
        try {
            byte[] body = DECODER.decode(text.substring(0, dot));
            byte[] signature = DECODER.decode(text.substring(dot + 1));
            if (!Signature.same(signature, Signature.of(key, body))) {
                return new Check.Foreign();
            }
            Claim claim = claim(JSON.readTree(body));
            return now.isBefore(claim.ends()) ? new Check.Valid(claim) : new Check.Expired(claim);
        } catch (IllegalArgumentException | IOException damaged) {
            return new Check.Foreign();
        }
    }

    private static Claim claim(JsonNode body) {
        return new Claim(
                body.path("person").asText(),
                body.path("trap").asText(),
                Kind.valueOf(body.path("kind").asText()),
                Instant.ofEpochMilli(body.path("onset").asLong()),
                Instant.ofEpochMilli(body.path("ends").asLong()));
    }
}
