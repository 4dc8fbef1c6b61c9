package org.duskline.analyzer.season;

import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;

/**
 * One trap of a synthetic line with its node.
 *
 * @param trap name and place
 * @param fitting which node hangs there over the whole season
 * @param periodSeconds between samples
 * @param samplesPerPack in one message
 * @param countsPerKg of a node that sends raw converter counts from 0; NaN if it sends kilograms
 */
public record Watched(Trap trap, Fitting fitting, int periodSeconds, int samplesPerPack, double countsPerKg) {}
