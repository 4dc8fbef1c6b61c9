/**
 * The desk at which a keeper tries other thresholds: one worker replays and searches in the background, and whoever asked
 * is told how far it is. A later wish from the same seat cancels the earlier one.
 * <p>May import the analyser and the collector's store. Knows no HTTP; what it shows is made in {@code page}.
 */
package org.duskline.web.tuning;
