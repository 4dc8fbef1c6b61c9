package org.duskline.web.page;

/**
 * A tick on the time axis of a drawing.
 *
 * @param x where, an SVG length
 * @param label the hour
 */
public record Tick(String x, String label) {}
