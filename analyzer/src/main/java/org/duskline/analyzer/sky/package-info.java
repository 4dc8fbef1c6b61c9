/**
 * The sun over a place: rise, set and civil twilight of a local day, and the evening that follows it.
 * <p>Places and dates in, instants out, by a library; within half a minute of the ephemeris below 63 degrees of latitude,
 * a minute up to 69, and two and a half minutes beyond, where the sun's path is flat. A leaf: imports nothing of the project. What bees make of the light never belongs here.
 */
package org.duskline.analyzer.sky;
