package org.duskline.web.page;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Kind;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.QuietHours;

/** Reads the forms about people and their channels; what cannot be read is refused in words for whoever filled them in. */
final class PersonEntry {
    /** How long before a trap can be closed people may be reminded, in minutes; none for never. */
    static final List<Integer> LEADS = List.of(30, 60, 90, 120, 180, 240);

    private PersonEntry() {}

    static String text(Context context, String field) {
        return Optional.ofNullable(context.formParam(field)).map(String::strip).orElse("");
    }

    static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException unknown) {
            throw new BadRequest("\"" + name + "\" is no time zone. Choose one such as Europe/Vienna.");
        }
    }

    /** Both hours, or neither. */
    static Optional<QuietHours> quiet(String from, String until) {
        if (from.isEmpty() && until.isEmpty()) {
            return Optional.empty();
        }
        if (from.isEmpty() || until.isEmpty()) {
            throw new BadRequest("Quiet hours need a beginning and an end. Leave both empty for none.");
        }
        try {
            return Optional.of(new QuietHours(LocalTime.parse(from), LocalTime.parse(until)));
        } catch (DateTimeException unreadable) {
            throw new BadRequest("\"" + from + "\" to \"" + until + "\" are no hours. Write them as 22:00 and 07:00.");
        } catch (IllegalArgumentException endless) {
            throw new BadRequest(endless.getMessage());
        }
    }

    static Optional<Duration> lead(String minutes) {
        if (minutes.equals("never")) {
            return Optional.empty();
        }
        return LEADS.stream()
                .filter(lead -> minutes.equals(lead.toString()))
                .findFirst()
                .map(lead -> Optional.of(Duration.ofMinutes(lead)))
                .orElseThrow(() -> new BadRequest("\"" + minutes + "\" is no lead time that can be chosen."));
    }

    static Means means(String name) {
        return Arrays.stream(Means.values())
                .filter(means -> means.name().toLowerCase(Locale.ROOT).equals(name))
                .findFirst()
                .orElseThrow(() -> new BadRequest("\"" + name + "\" is no way to tell somebody."));
    }

    static Set<Kind> kinds(List<String> names) {
        return Arrays.stream(Kind.values())
                .filter(kind -> names.contains(kind.wireName()))
                .collect(Collectors.toSet());
    }
}
