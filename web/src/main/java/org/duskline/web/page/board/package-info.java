/**
 * What the pages show, as values, and the one interface through which they get them. A page or an API answer is made
 * from these and from nothing else.
 * <p>May import the collector's store and the analyzer's logs and values. No HTTP, no SQL, no markup, no words for
 * people beyond those that the analyser has already chosen.
 */
package org.duskline.web.page.board;
