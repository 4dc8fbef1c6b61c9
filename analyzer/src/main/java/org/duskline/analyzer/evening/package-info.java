/**
 * Tonight's work: when each occupied trap can be closed, in which order, how long it takes, what to lift and to bring;
 * and the same as text, CSV, calendar, GPX and map links.
 * <p>Findings, visits, samples and settings in, the sheet out; no clock, no I/O. May import {@code finding}, {@code
 * visit} (values only), {@code sky}, {@code stats} and the collector's values. Detection never belongs here.
 */
package org.duskline.analyzer.evening;
