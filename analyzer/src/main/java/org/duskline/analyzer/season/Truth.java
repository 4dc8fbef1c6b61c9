package org.duskline.analyzer.season;

import java.util.List;

/**
 * What really happened on a line.
 *
 * @param seed of the season
 * @param level clean, typical or harsh
 * @param start first day, ISO 8601
 * @param days length
 * @param traps one each
 */
public record Truth(long seed, String level, String start, int days, List<TrapTruth> traps) {}
