package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.collector.wire.Status;

/** How the pages say things: ages, hours, certainty, and the names of conditions and kinds. */
public final class Words {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final String UNKNOWN = "–";
    private static final char MINUS = '−';

    private Words() {}

    public static String clock(Instant time, ZoneId zone) {
        return CLOCK.format(time.atZone(zone));
    }

    public static String day(Instant time, ZoneId zone) {
        return DAY.format(time.atZone(zone));
    }

    public static String shortDay(Instant time, ZoneId zone) {
        return SHORT_DAY.format(time.atZone(zone));
    }

    /** "13:04" on the same day as {@code now}, otherwise "Mon 11 May, 13:04". */
    public static String moment(Instant time, Instant now, ZoneId zone) {
        boolean sameDay =
                time.atZone(zone).toLocalDate().equals(now.atZone(zone).toLocalDate());
        return sameDay ? clock(time, zone) : shortDay(time, zone) + ", " + clock(time, zone);
    }

    /** How long ago, in the largest unit that still tells. The pages' script says it in the same words. */
    public static String age(Instant then, Instant now) {
        long minutes = Duration.between(then, now).toMinutes();
        if (minutes < 1) {
            return "just now";
        }
        if (minutes < 90) {
            return minutes + " min ago";
        }
        long hours = Math.round(minutes / 60.0);
        return hours < 48 ? hours + " h ago" : Math.round(hours / 24.0) + " days ago";
    }

    public static String length(Duration duration) {
        long minutes = Math.round(duration.toSeconds() / 60.0);
        if (minutes < 90) {
            return minutes + " min";
        }
        return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }

    public static String certainty(double probability) {
        if (Double.isNaN(probability)) {
            return "can't be said";
        }
        if (probability >= 0.97) {
            return "as good as certain";
        }
        if (probability >= 0.85) {
            return "very likely";
        }
        if (probability >= 0.6) {
            return "likely";
        }
        return probability >= 0.4 ? "open" : "unlikely";
    }

    /** A probability in whole per cent, never a false 0 or 100. */
    public static String percent(double probability) {
        if (Double.isNaN(probability)) {
            return UNKNOWN;
        }
        return Math.max(1, Math.min(99, Math.round(probability * 100))) + " %";
    }

    public static String kg(double weight) {
        return number(weight, 2);
    }

    public static String perMinute(double bees) {
        boolean few = bees < 9.95 && Math.abs(bees - Math.rint(bees)) >= 0.05;
        return number(bees, few ? 1 : 0);
    }

    public static String celsius(double temperature) {
        return number(temperature, 1);
    }

    public static String volts(double battery) {
        return number(battery, 2);
    }

    static String number(double value, int decimals) {
        if (Double.isNaN(value)) {
            return UNKNOWN;
        }
        return String.format(Locale.ROOT, "%." + decimals + "f", value).replace('-', MINUS);
    }

    public static String count(long number, String one, String many) {
        String[] small = {"No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten"};
        return (number < small.length ? small[(int) number] : String.valueOf(number)) + " "
                + (number == 1 ? one : many);
    }

    public static String condition(Condition condition) {
        String word = condition.wireName();
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    public static String kind(Kind kind) {
        return switch (kind) {
            case SCOUTING -> "Scouts are looking";
            case MOVE_IN -> "A swarm has moved in";
            case DEPARTURE -> "The colony has left";
            case ROBBING -> "Robbers at the comb";
            case DISTURBED -> "Handled or shaken";
            case SOAKED -> "Rain in the wood";
            case LODGER -> "A lodger, no bees";
            case TARE_SHIFT -> "The scale jumped";
            case UNHEARD -> "Not heard from";
            case FAULTY -> "A sensor is wrong";
            case BATTERY_LOW -> "Battery low";
            case LEAKING -> "Bees pass the closed door";
            case OVERHEATING -> "The closed box gets too warm";
            case GONE -> "The weight has vanished";
        };
    }

    public static String rival(Rival rival) {
        return switch (rival) {
            case SWARM -> "a swarm";
            case SCOUTS -> "scouts";
            case HANDS -> "somebody's hands";
            case TARE_SHIFT -> "the scale jumped";
            case RAIN -> "rain";
            case BIRD -> "a bird";
            case MOUSE -> "a mouse";
            case BUMBLEBEES -> "bumblebees";
            case ROBBERS -> "robbers";
            case GLARE -> "sun in the counter";
            case ANTS -> "ants";
            case WIND -> "wind";
            case SUN_DRIFT -> "sun on the scale";
            case RESTART -> "the node restarted";
            case NOTHING -> "nothing at all";
        };
    }

    public static String stage(Stage stage) {
        return switch (stage) {
            case RAISED -> "raised";
            case ARRIVED -> "all in";
            case STRENGTHENED -> "borne out since";
            case ENDED -> "over";
            case WITHDRAWN -> "withdrawn";
        };
    }

    /** "about 1.4 kg (1.1 to 1.8), some 11,000 bees"; empty for a finding without a size. */
    public static String size(Finding finding) {
        return finding.size()
                .map(size -> String.format(
                        Locale.ENGLISH,
                        "about %.1f kg (%.1f to %.1f), some %,d bees",
                        size.kg(),
                        size.lowKg(),
                        size.highKg(),
                        Math.round(size.bees() / 500.0) * 500))
                .orElse("");
    }

    public static String wholeKg(double weight) {
        return number(weight, 0);
    }

    /** "18.2 to 24.9", or one number when it did not change. */
    public static String range(double low, double high) {
        String lowest = number(low, 1);
        String highest = number(high, 1);
        return lowest.equals(highest) ? lowest : lowest + " to " + highest;
    }

    public static String fitted(Fitted fitted) {
        return switch (fitted) {
            case BOTH -> "a counter and a scale";
            case COUNTER -> "a counter, no scale";
            case SCALE -> "a scale, no counter";
        };
    }

    public static String quick(QuickMode mode) {
        return switch (mode) {
            case AUTO -> "when something moves";
            case ON -> "always";
            case OFF -> "never";
        };
    }

    public static String status(Status status) {
        return status == Status.ONLINE ? "online" : "offline";
    }

    public static String place(Trap trap) {
        return String.format(
                Locale.ROOT,
                "%.4f° %s, %.4f° %s",
                Math.abs(trap.latitude()),
                trap.latitude() < 0 ? "S" : "N",
                Math.abs(trap.longitude()),
                trap.longitude() < 0 ? "W" : "E");
    }

    /** The explanations that compete, the likeliest first; those below one per cent are left out. */
    public static List<Map.Entry<Rival, Double>> rivals(Finding finding) {
        return finding.rivals().entrySet().stream()
                .filter(rival -> rival.getValue() >= 0.01)
                .sorted(Map.Entry.<Rival, Double>comparingByValue().reversed())
                .toList();
    }

    public static String visit(VisitKind kind) {
        return switch (kind) {
            case SET -> "Set";
            case BAITED -> "Baited";
            case LOOKED -> "Looked at";
            case OPENED -> "Opened again";
            case CLOSED -> "Closed";
            case COLLECTED -> "Collected";
            case REHUNG -> "Hung again";
            case TAKEN_DOWN -> "Taken down";
        };
    }

    public static String km(double distance) {
        return number(distance, 1);
    }
}
