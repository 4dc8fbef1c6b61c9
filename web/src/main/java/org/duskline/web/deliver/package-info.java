/**
 * How findings are told: the words and forms that leave the program, and the channels that carry them.
 * <p>May import the analyser's findings and outbox, the store and the intake's publisher. Decides nothing about bees; never shows a
 * page.
 */
package org.duskline.web.deliver;
