package org.duskline.web.page;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URLEncoder;
import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.evening.GeoUri;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/** Where things are found: the addresses of pages and of places. */
public final class Links {
    private static final Duration AROUND_A_FINDING = Duration.ofHours(6);

    private Links() {}

    public static String address(String trap) {
        return TrapAddress.of(trap);
    }

    public static String trap(String trap) {
        return "/traps/" + TrapAddress.of(trap);
    }

    /** A node's own page; its name needs no encoding (wire contract). */
    public static String node(String node) {
        return "/node/" + URLEncoder.encode(node, UTF_8);
    }

    /** The trap's curve around the onset of a finding. */
    public static String curveAround(Finding finding) {
        return curve(
                finding.trap(),
                finding.onset().minus(AROUND_A_FINDING),
                finding.onset().plus(AROUND_A_FINDING));
    }

    /** A stretch of a trap's curve. */
    public static String curve(String trap, Instant from, Instant until) {
        return trap(trap) + between(from, until);
    }

    /** Where it is said how near a stretch came to a finding. */
    public static String why(String trap, Instant from, Instant until) {
        return trap(trap) + "/why" + between(from, until);
    }

    /** Where other thresholds are tried at one trap alone. */
    public static String tuning(String trap) {
        return "/tuning?trap=" + URLEncoder.encode(trap, UTF_8);
    }

    private static String between(Instant from, Instant until) {
        return "?from=" + time(from) + "&until=" + time(until);
    }

    /** The element that holds a finding's story on its trap's page. */
    public static String story(Finding finding) {
        return finding.kind().wireName() + "-" + finding.onset().getEpochSecond();
    }

    /** A finding's own page. */
    public static String storyPage(Finding finding) {
        return "/story?finding=" + URLEncoder.encode(FindingAddress.of(finding), UTF_8);
    }

    /** Where a finding is answered. */
    public static String answer(Finding finding) {
        return "/answers?finding=" + URLEncoder.encode(FindingAddress.of(finding), UTF_8);
    }

    /** Where other thresholds are tried on what a finding was raised from. */
    public static String tuning(Finding finding) {
        return "/tuning?finding=" + URLEncoder.encode(FindingAddress.of(finding), UTF_8);
    }

    /** A geo: address (RFC 5870), which a phone opens in its own map. */
    public static String place(Trap trap) {
        return GeoUri.of(trap.latitude(), trap.longitude());
    }

    private static String time(Instant instant) {
        return URLEncoder.encode(instant.toString(), UTF_8);
    }
}
