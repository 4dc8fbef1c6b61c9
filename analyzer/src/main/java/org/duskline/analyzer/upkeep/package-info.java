/**
 * What the line needs beside swarms: fresh bait, batteries, nodes that are heard, traps that are looked at.
 * <p>Visits, samples and limits in, reminders out; no clock, no I/O. May import {@code visit} (values only), {@code
 * stats} and the collector's values. Nothing about bees belongs here.
 */
package org.duskline.analyzer.upkeep;
