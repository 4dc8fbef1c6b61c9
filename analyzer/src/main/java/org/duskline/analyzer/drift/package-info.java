/**
 * How a scale's zero moves with its temperature: learned from the node's own hours, with its uncertainty, and taken out.
 * <p>Pure: samples in, numbers out. May import {@code stats} and the collector's {@code wire}.
 */
package org.duskline.analyzer.drift;
