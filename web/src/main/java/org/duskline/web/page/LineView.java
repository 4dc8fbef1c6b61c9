package org.duskline.web.page;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.duskline.analyzer.finding.Condition;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.LooseNode;
import org.duskline.web.page.board.TrapNow;

/**
 * The page of the whole line.
 *
 * @param line the line as it is now
 * @param rows every trap with the curve of its last day
 * @param ticks hours over the curves
 */
public record LineView(LineOverview line, List<Row> rows, List<Tick> ticks) {
    public record Row(TrapNow trap, Strip strip) {}

    /** The time zone of the line, by its first trap. */
    public ZoneId zone() {
        return rows.stream().findFirst().map(row -> row.trap().trap().zone()).orElse(ZoneOffset.UTC);
    }

    /** How the line stands, in a few words: "1 filling, 1 unheard, the rest quiet." */
    public String standing() {
        Map<Condition, Long> numbers = new EnumMap<>(Condition.class);
        line.traps().forEach(trap -> numbers.merge(trap.condition(), 1L, Long::sum));
        Long quiet = numbers.remove(Condition.QUIET);
        if (numbers.isEmpty()) {
            return "All quiet.";
        }
        String others = numbers.entrySet().stream()
                .map(number -> number.getValue() + " " + number.getKey().wireName())
                .collect(Collectors.joining(", "));
        return others + (quiet == null ? "." : ", the rest quiet.");
    }

    /** Every node that hangs somewhere or was heard, by name. */
    public List<String> nodes() {
        return Stream.concat(
                        line.traps().stream().flatMap(trap -> trap.node().stream()),
                        line.looseNodes().stream().map(LooseNode::node))
                .distinct()
                .sorted()
                .toList();
    }
}
