/**
 * The program's entry: the command line, the configuration and the wiring of all parts.
 * <p>May import everything. Only this package asks the system clock.
 */
package org.duskline.web.app;
