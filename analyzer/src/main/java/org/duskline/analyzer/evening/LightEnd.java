package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.sky.Nightfall;

/**
 * When the light no longer lets bees fly, and when it does again.
 *
 * @param at civil dusk; the sunset of a bright night; shortly before the sun stands lowest where it does not set
 * @param lightAgain civil dawn; the sunrise of a bright night; shortly after the sun stood lowest
 * @param reason in the keeper's words
 * @param dark whether it gets dark at all
 */
record LightEnd(Instant at, Instant lightAgain, String reason, boolean dark) {
    /** How long the traffic is lowest about the lowest sun where it does not set; a guess, said so. */
    private static final Duration LULL = Duration.ofMinutes(90);

    private static final Duration HALF_DAY = Duration.ofHours(12);

    static LightEnd of(Nightfall night) {
        if (night instanceof Nightfall.Dark dark) {
            return new LightEnd(dark.dusk(), dark.dawn(), "civil dusk", true);
        }
        if (night instanceof Nightfall.Bright bright) {
            return new LightEnd(bright.sunset(), bright.sunrise(), "sunset; it does not get dark tonight", false);
        }
        if (night instanceof Nightfall.Sunlit sunlit) {
            return new LightEnd(
                    sunlit.lowest().minus(LULL),
                    sunlit.lowest().plus(LULL),
                    "the lowest sun; it does not set tonight, so watch the entrance",
                    false);
        }
        Instant noon = ((Nightfall.Sunless) night).noon();
        return new LightEnd(noon, noon.plus(HALF_DAY), "no sunrise today", true);
    }
}
