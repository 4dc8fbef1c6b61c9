package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import org.duskline.analyzer.finding.Kind;
import org.junit.jupiter.api.Test;

class AnswerLinkTest {
    private static final Instant NOON = Instant.parse("2026-05-12T12:00:00Z");
    private static final AnswerLink.Claim CLAIM = new AnswerLink.Claim(
            "Ada", "Mühl/Race", Kind.MOVE_IN, NOON.minusSeconds(600), NOON.plus(Duration.ofDays(3)));

    private final AnswerLink links = new AnswerLink(key(1));

    private static byte[] key(int filling) {
        byte[] key = new byte[32];
        Arrays.fill(key, (byte) filling);
        return key;
    }

    @Test
    void a_link_says_who_answers_what() {
        assertThat(links.verify(links.issue(CLAIM), NOON)).isEqualTo(new AnswerLink.Check.Valid(CLAIM));
        assertThat(links.issue(CLAIM)).matches("[A-Za-z0-9_.-]+");
    }

    @Test
    void a_link_ends_at_its_time_and_not_before() {
        String link = links.issue(CLAIM);
        assertThat(links.verify(link, CLAIM.ends().minusMillis(1))).isInstanceOf(AnswerLink.Check.Valid.class);
        assertThat(links.verify(link, CLAIM.ends())).isEqualTo(new AnswerLink.Check.Expired(CLAIM));
    }

    @Test
    void no_character_of_a_link_can_be_changed() {
        String link = links.issue(CLAIM);
        for (int i = 0; i < link.length(); i++) {
            char other = link.charAt(i) == 'A' ? 'Q' : 'A';
            String changed = link.substring(0, i) + other + link.substring(i + 1);
            // The last character of a base64 text may hold bits that stand for nothing.
            if (i != link.length() - 1) {
                assertThat(links.verify(changed, NOON)).as(changed).isEqualTo(new AnswerLink.Check.Foreign());
            }
        }
    }

    @Test
    void another_installations_link_is_foreign() {
        assertThat(links.verify(new AnswerLink(key(2)).issue(CLAIM), NOON)).isEqualTo(new AnswerLink.Check.Foreign());
    }

    @Test
    void rubbish_is_foreign_and_does_no_harm() {
        String forged = Base64.getUrlEncoder().encodeToString("{\"person\":\"Ada\"}".getBytes(StandardCharsets.UTF_8));
        for (String text : new String[] {"", ".", "a", "..", "%%%.%%%", forged, forged + ".", forged + "." + forged}) {
            assertThat(links.verify(text, NOON)).as(text).isEqualTo(new AnswerLink.Check.Foreign());
        }
    }

    @Test
    void a_short_key_is_refused() {
        assertThatThrownBy(() -> new AnswerLink(new byte[8])).hasMessageContaining("32 bytes");
    }
}
