package org.duskline.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;

/** What can be answered to which kind of finding, and in which words. */
public final class AnswerChoices {
    /** What is said of bees or of weight, and so can have been something else. */
    private static final Set<Kind> JUDGED = Set.of(
            Kind.SCOUTING,
            Kind.MOVE_IN,
            Kind.DEPARTURE,
            Kind.ROBBING,
            Kind.DISTURBED,
            Kind.SOAKED,
            Kind.LODGER,
            Kind.TARE_SHIFT,
            Kind.LEAKING,
            Kind.GONE);

    private AnswerChoices() {}

    /** How far somebody may be with it. Only a swarm is closed in. */
    public static List<Said> progress(Kind kind) {
        return kind == Kind.MOVE_IN ? List.of(Said.SEEN, Said.GOING, Said.CLOSED) : List.of(Said.SEEN, Said.GOING);
    }

    /** What it may really have been; nothing for what a node says of itself. */
    public static List<Said> verdicts(Kind kind) {
        return JUDGED.contains(kind)
                ? Arrays.stream(Said.values()).filter(Said::isVerdict).toList()
                : List.of();
    }

    public static String words(Said said) {
        return switch (said) {
            case SEEN -> "Seen";
            case GOING -> "I’m going";
            case CLOSED -> "Closed";
            case SWARM -> "A swarm";
            case RAIN -> "Rain";
            case ROBBERS -> "Robbers";
            case HANDS -> "Somebody’s hands";
            case ANIMAL -> "An animal";
            case SCALE_JUMPED -> "A jump of the scale";
            case OTHER -> "Something else";
        };
    }

    /** For a list of who said what: "Ida has seen it". */
    public static String told(String who, Said said) {
        return switch (said) {
            case SEEN -> who + " has seen it";
            case GOING -> who + " is going";
            case CLOSED -> who + " has closed it";
            default -> who + ": " + lower(words(said));
        };
    }

    /** The same with its hour, for a line beside other things: "Ida is going, 18:40". */
    public static String told(Answer answer, Instant now, ZoneId zone) {
        return told(answer.by(), answer.said()) + ", " + Words.moment(answer.at(), now, zone);
    }

    /**
     * How far each who answered is with a finding, and last what it really was. An earlier answer of somebody has been
     * overtaken by their later one, an earlier verdict by a later one of whomever.
     */
    public static List<Answer> standing(List<Answer> given) {
        Map<String, Answer> latest = new LinkedHashMap<>();
        for (Answer answer : given) {
            String place = answer.said().isVerdict() ? "" : answer.by();
            latest.remove(place);
            latest.put(place, answer);
        }
        return List.copyOf(latest.values());
    }

    private static String lower(String words) {
        return "it was " + words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }
}
