package org.duskline.analyzer.finding;

/**
 * One piece of evidence, in the keeper's words and as a weight.
 *
 * @param said what was seen, with its numbers: "+1.42 kg in 14 min (threshold 0.60)"
 * @param logOdds natural logarithm of how much it speaks for the finding (above 0) or against (below 0)
 */
public record Evidence(String said, double logOdds) {}
