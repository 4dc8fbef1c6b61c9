/**
 * What the pages show, as values, and the one interface through which they get them. A page or an API answer is made
 * from these and from nothing else.
 * <p>May import values of the collector and the analyzer. No HTTP, no markup, no words for people beyond those that the
 * analyser has already chosen.
 */
package org.duskline.web.page.board;
