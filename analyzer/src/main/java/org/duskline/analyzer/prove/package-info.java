/**
 * The proving ground: plays synthetic seasons through decoding, store and watch, judges the findings against the truth,
 * and sets the figures beside the promises with their intervals, as a table and as pictures.
 * <p>May import {@code season}, {@code watch}, {@code finding}, {@code stats} and the collector. Judges only; nothing of
 * what it knows may reach a detector.
 */
package org.duskline.analyzer.prove;
