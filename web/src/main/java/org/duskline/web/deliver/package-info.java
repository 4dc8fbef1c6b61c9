/**
 * How findings are told: the words and forms that leave the program, the people and their channels, the outbox that is
 * written together with the findings, and the dispatcher that empties it; beside them the book of findings for whoever listens at the broker, and its courier.
 * <p>Findings enter on the analyser's thread, inside its transaction; one thread of this package sends. May import the
 * analyser's findings, outbox, cautions and sun, and the collector's store, line and publisher. Decides nothing about bees;
 * never shows a page.
 */
package org.duskline.web.deliver;
