package org.duskline.web.app;

import java.io.InputStream;
import java.io.PrintStream;
import java.time.InstantSource;
import java.util.Map;

/**
 * What the program finds around it when it is started.
 *
 * @param out for results, which other programs may read
 * @param err for everything said to people: progress, complaints, the log
 * @param environment the environment's variables
 * @param clock the present
 * @param in what is typed or piped in
 */
record Surroundings(
        PrintStream out, PrintStream err, Map<String, String> environment, InstantSource clock, InputStream in) {}
