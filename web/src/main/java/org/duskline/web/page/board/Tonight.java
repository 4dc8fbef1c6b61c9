package org.duskline.web.page.board;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.duskline.analyzer.evening.EveningSheet;

/**
 * Tonight's work as its page shows it.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param sheet the evening sheet
 * @param night the coming night; empty where there is no trap to say where
 * @param looks what else needs a look
 * @param traps how many traps the line has
 */
public record Tonight(
        Instant now, BrokerLink link, EveningSheet sheet, Optional<Night> night, List<Look> looks, int traps) {
    public Tonight {
        looks = List.copyOf(looks);
    }

    /** What else needs a look, by its trap, in the order in which the traps come first. */
    public Map<String, List<Look>> looksByTrap() {
        return looks.stream().collect(Collectors.groupingBy(Look::trap, LinkedHashMap::new, Collectors.toList()));
    }
}
