package org.duskline.collector.wire;

import java.util.List;

/**
 * A pack whose samples have found their times.
 *
 * @param samples in time order, at least one
 * @param run the run of the wrong clock that they were placed by; null if the clock was right or there is none
 * @param earlierByMillis by how much later the earlier samples of that run had been placed; 0 if they stand right
 */
public record TimedPack(List<Sample> samples, ClockRun run, long earlierByMillis) {}
