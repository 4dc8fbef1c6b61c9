/**
 * Rules for after the closing: bees that still pass, warmth that climbs in the box, a swarm that nobody fetches, and a
 * weight that has vanished.
 * <p>Samples, visits' times and limits in, notices out; no clock, no I/O. May import {@code finding}, {@code stats} and
 * the collector's values. What happens before closing never belongs here.
 */
package org.duskline.analyzer.closed;
