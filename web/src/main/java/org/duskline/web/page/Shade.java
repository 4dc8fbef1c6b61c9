package org.duskline.web.page;

/**
 * A darkened stretch of a drawing.
 *
 * @param x its left edge, an SVG length
 * @param width its width, an SVG length
 */
public record Shade(String x, String width) {}
