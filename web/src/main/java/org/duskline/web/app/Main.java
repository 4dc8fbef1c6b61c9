package org.duskline.web.app;

import java.time.Clock;

/** The program's entry: takes hold of the surroundings and hands over to the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        // Pictures are drawn in memory: a screen, where there is one, must not be opened, nor missed where there is
        // none.
        System.setProperty("java.awt.headless", "true");
        Surroundings surroundings =
                new Surroundings(System.out, System.err, System.getenv(), Clock.systemUTC(), System.in);
        int exit = Program.run(surroundings, arguments);
        System.out.flush();
        System.exit(exit);
    }
}
