package org.duskline.web.app;

import java.util.List;
import org.duskline.collector.store.LineBook;
import org.duskline.collector.trap.Trap;
import org.duskline.web.settings.NearestName;

/** The trap that somebody named on the command line. */
final class AskedTrap {
    private AskedTrap() {}

    /** @throws Failure if the line has none of that name; says the nearest, or which there are */
    static Trap on(LineBook line, String name) {
        return line.trap(name)
                .orElseThrow(() -> Failure.askedWrongly("The line has no trap named \"" + name + "\"."
                        + whichThereAre(
                                name, line.traps().stream().map(Trap::name).toList())));
    }

    private static String whichThereAre(String name, List<String> names) {
        if (names.isEmpty()) {
            return " It has none at all: enter your traps with \"duskline import --line FILE\", or name their file in the"
                    + " settings (line).";
        }
        return NearestName.to(name, names)
                .map(near -> " Did you mean \"" + near + "\"?")
                .orElse(" Its traps are " + String.join(", ", names) + ".");
    }
}
