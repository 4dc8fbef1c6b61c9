package org.duskline.analyzer.watch;

import org.duskline.analyzer.detect.Thresholds;

/**
 * The thresholds that hold at a trap.
 *
 * @param version noted in each finding that is raised under them
 * @param thresholds what detection runs on
 */
public record InForce(int version, Thresholds thresholds) {}
