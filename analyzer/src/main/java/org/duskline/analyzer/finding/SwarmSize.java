package org.duskline.analyzer.finding;

/**
 * The estimated size of a swarm with a 90 % interval.
 *
 * @param kg best estimate
 * @param lowKg lower end
 * @param highKg upper end
 * @param bees best estimate of the number of bees
 */
public record SwarmSize(double kg, double lowKg, double highKg, int bees) {}
