package org.duskline.web.page;

import static org.duskline.collector.trap.Fitted.BOTH;
import static org.duskline.collector.trap.Fitted.COUNTER;
import static org.duskline.collector.trap.Fitted.SCALE;

import java.util.List;
import org.duskline.analyzer.finding.Condition;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.InventedCurves.Story;

/**
 * A trap of the invented line.
 *
 * @param condition as of the evening, once its node is heard
 * @param story what its curves show
 */
record InventedBox(String name, Fitted fitted, Condition condition, Story story) {
    /** The whole line, by name. */
    static final List<InventedBox> ALL = List.of(
            new InventedBox("Alder Sluice", BOTH, Condition.FILLING, Story.SWARM),
            new InventedBox("Chapel Nook", BOTH, Condition.ROBBED, Story.ROBBED),
            new InventedBox("Gorse Landing", COUNTER, Condition.QUIET, Story.QUIET),
            new InventedBox("Hollow Gate", BOTH, Condition.UNHEARD, Story.SILENT_SINCE_MORNING),
            new InventedBox("Long Pit", BOTH, Condition.UNHEARD, Story.NEVER_HEARD),
            new InventedBox("Old Kiln", BOTH, Condition.SCOUTED, Story.SCOUTED),
            new InventedBox("Tern Bank", BOTH, Condition.QUIET, Story.QUIET),
            new InventedBox("Three Stiles", SCALE, Condition.QUIET, Story.QUIET),
            new InventedBox("Tithe Loft", COUNTER, Condition.OCCUPIED, Story.SWARM),
            new InventedBox("Weir House", BOTH, Condition.QUIET, Story.QUIET));

    static InventedBox named(String name) {
        return ALL.stream().filter(box -> box.name().equals(name)).findFirst().orElseThrow();
    }

    Trap trap() {
        double north = ALL.indexOf(this) * 0.013;
        return new Trap(name, 46.9 + north, 15.1 - north * (ALL.indexOf(this) % 3 - 1), InventedLine.ZONE);
    }

    String node() {
        return "n" + (10 + ALL.indexOf(this));
    }
}
