package org.duskline.web.deliver;

import java.util.List;
import org.duskline.analyzer.evening.Caution;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;

/** What each kind of finding is called in a message, and what to do about it. The advice is common practice. */
final class Phrases {
    private static final List<Caution> AT_ANY_TRAP = List.of(Caution.LOCAL_RULES, Caution.STINGS, Caution.LADDER);
    private static final List<Caution> AT_A_SWARM = List.of(
            Caution.LOCAL_RULES,
            Caution.STINGS,
            Caution.LADDER,
            Caution.WEIGHT,
            Caution.HEAT,
            Caution.TRANSPORT,
            Caution.NIGHT,
            Caution.DISEASE,
            Caution.DEFENSIVE_BEES);

    private Phrases() {}

    static String what(Kind kind) {
        return switch (kind) {
            case SCOUTING -> "scouts are looking at the box";
            case MOVE_IN -> "a swarm has moved in";
            case DEPARTURE -> "the colony has left";
            case ROBBING -> "robbers at the comb";
            case DISTURBED -> "the box was handled or shaken";
            case SOAKED -> "rain has soaked in";
            case LODGER -> "a lodger, no bees";
            case TARE_SHIFT -> "the scale has jumped";
            case UNHEARD -> "nothing heard from the node";
            case FAULTY -> "a sensor is wrong";
            case BATTERY_LOW -> "the battery is low";
            case LEAKING -> "bees pass the closed entrance";
            case OVERHEATING -> "the closed box is getting too warm";
            case GONE -> "the weight has vanished";
        };
    }

    static String toDo(Kind kind) {
        return switch (kind) {
            case MOVE_IN ->
                "Close the box once flight has ended, and take it home soon, before fresh comb can break on the"
                        + " road.";
            case OVERHEATING -> "Shade the box and give it air, or open it. Bees shut in a hot box die.";
            case LEAKING -> "Mend the closure before anybody lifts the box or puts it in a car.";
            case GONE -> "See whether the box has fallen, was taken down or was stolen.";
            case SCOUTING -> "Nothing to close yet. Keep the next evenings free; many scoutings come to nothing.";
            case DEPARTURE -> "Look into the box, clean it and bait it again.";
            case ROBBING -> "Take old comb out: it draws robbers and moth, and can carry disease.";
            case UNHEARD ->
                "See to the node, its battery and its radio. Until it is heard, nothing is known of this trap.";
            case FAULTY -> "See to the sensor. Until then less is known of this trap.";
            case BATTERY_LOW -> "Charge or change the battery.";
            case DISTURBED, SOAKED, LODGER, TARE_SHIFT -> "Look at the box.";
        };
    }

    /** By when, where it does not hang on the sun. */
    static String byWhen(Kind kind) {
        return switch (kind) {
            case MOVE_IN -> "this evening after flight ends, or before it begins at dawn";
            case OVERHEATING -> "at once";
            case LEAKING -> "before the box is moved";
            case GONE, DEPARTURE, ROBBING -> "the next daylight that suits you";
            case SCOUTING -> "nothing yet";
            case UNHEARD, FAULTY, BATTERY_LOW, DISTURBED, SOAKED, LODGER, TARE_SHIFT -> "on your next round";
        };
    }

    static List<Caution> cautions(Kind kind) {
        return kind == Kind.MOVE_IN || kind == Kind.OVERHEATING ? AT_A_SWARM : AT_ANY_TRAP;
    }

    static String rival(Rival rival) {
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

    /** A probability in words and whole per cent, never a false 0 or 100. */
    static String sure(double probability) {
        if (Double.isNaN(probability)) {
            return "can't be said";
        }
        long percent = Math.max(1, Math.min(99, Math.round(probability * 100)));
        String words = probability >= 0.97
                ? "as good as certain"
                : probability >= 0.85 ? "very likely" : probability >= 0.6 ? "likely" : "open";
        return words + " (" + percent + " %)";
    }
}
