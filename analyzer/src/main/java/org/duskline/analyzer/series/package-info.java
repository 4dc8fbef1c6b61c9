/**
 * The samples of one trap as clean columns in time order: counts that survive restarts and read errors, weights without
 * absurd values, late samples in their place.
 * <p>May import {@code stats} and the collector's values. Knows no thresholds and concludes nothing.
 */
package org.duskline.analyzer.series;
