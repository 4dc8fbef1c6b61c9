/**
 * A trap's curve: what its samples say about traffic, weight and warmth over time, thinned for a screen without losing
 * a peak, and the same in rows for those who read it as text.
 * <p>Pure: points in, values out. Imports nothing of the project; no clock, no I/O, no thread.
 */
package org.duskline.analyzer.curve;
