package org.duskline.web.deliver;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.jdbi.v3.core.Handle;

/**
 * Reminds of the traps of an evening that nobody has answered for: once as long before they can be closed as the person
 * has chosen, and once when they can. All traps of an evening share a message. Quiet hours do not hold it back: it is of
 * use in that evening alone.
 */
final class Reminders {
    /** Whoever has just been told needs no reminder. */
    static final Duration AFTER_THE_ALARM = Duration.ofMinutes(30);

    /** An evening lasts until the morning's work is over. */
    private static final Duration MORNING = Duration.ofHours(8);

    private final AlertText text;

    Reminders(AlertText text) {
        this.text = text;
    }

    private enum Step {
        BEFORE,
        NOW
    }

    void remind(Handle handle, List<Unanswered> traps, Instant now) {
        for (Channel channel : AddressBook.channels(handle)) {
            Optional<Duration> lead = channel.person().reminder();
            if (lead.isPresent() && channel.kinds().contains(Kind.MOVE_IN)) {
                put(handle, channel, Step.BEFORE, before(traps, lead.get(), now), now);
                put(handle, channel, Step.NOW, closableNow(traps, now), now);
            }
        }
    }

    private static List<Unanswered> before(List<Unanswered> traps, Duration lead, Instant now) {
        return traps.stream()
                .filter(trap -> toldBefore(trap, now)
                        && !now.isBefore(trap.closable().minus(lead))
                        && now.isBefore(trap.closable()))
                .toList();
    }

    private static List<Unanswered> closableNow(List<Unanswered> traps, Instant now) {
        return traps.stream()
                .filter(trap -> toldBefore(trap, now) && !now.isBefore(trap.closable()) && now.isBefore(trap.shuts()))
                .toList();
    }

    private static boolean toldBefore(Unanswered trap, Instant now) {
        return !trap.moveIn().raised().plus(AFTER_THE_ALARM).isAfter(now);
    }

    private void put(Handle handle, Channel channel, Step step, List<Unanswered> traps, Instant now) {
        if (traps.isEmpty()) {
            return;
        }
        LocalDate evening = traps.get(0)
                .closable()
                .atZone(channel.person().zone())
                .minus(MORNING)
                .toLocalDate();
        new AlertRow(
                        channel.id(),
                        "evening/" + evening,
                        step.name(),
                        true,
                        Stage.RAISED,
                        Optional.of(traps.get(0).moveIn().trap()).filter(trap -> traps.size() == 1),
                        Optional.empty(),
                        text.reminder(traps, step == Step.NOW, channel.person(), now),
                        object(traps),
                        now,
                        now)
                .insert(handle);
    }

    private static String object(List<Unanswered> traps) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        object.put("kind", "reminder");
        object.putArray("traps")
                .addAll(traps.stream()
                        .map(trap -> JsonNodeFactory.instance
                                .objectNode()
                                .put("trap", trap.moveIn().trap())
                                .put("closable", trap.closable().toString())
                                .put("shuts", trap.shuts().toString()))
                        .collect(Collectors.toList()));
        return object.toString();
    }
}
