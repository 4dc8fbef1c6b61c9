package org.duskline.web.page;

import io.javalin.http.Context;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.replay.Dial;

/** Reads turned thresholds from an address or a form; what is not named stays as it is. */
final class Turned {
    private Turned() {}

    /** @throws BadRequest when a number is none, or is out of range */
    static Thresholds read(Context context, Thresholds base) {
        Thresholds turned = base;
        for (Dial dial : Dial.values()) {
            Optional<String> text = Optional.ofNullable(context.queryParam(dial.key()))
                    .or(() -> Optional.ofNullable(context.formParam(dial.key())))
                    .filter(given -> !given.isBlank());
            if (text.isPresent()) {
                turned = turned(dial, turned, text.get());
            }
        }
        return turned;
    }

    private static Thresholds turned(Dial dial, Thresholds base, String text) {
        try {
            double value = Double.parseDouble(text);
            // What holds now may lie between two stops; a dial that was not turned keeps it.
            boolean untouched = dial.stopFor(dial.of(base)) == dial.stopFor(value)
                    && dial.stops().get(dial.stopFor(value)) == value;
            return untouched ? base : dial.turned(base, value);
        } catch (NumberFormatException notANumber) {
            throw new BadRequest("\"" + text + "\" in " + dial.key() + "= is not a number.");
        } catch (IllegalArgumentException outOfRange) {
            throw new BadRequest(outOfRange.getMessage());
        }
    }
}
