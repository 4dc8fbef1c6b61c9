/**
 * The watch over the line: each trap's past folded in time order into findings, folded again from an earlier state when
 * late samples change it. {@code Analyzer} is the entry: it pulls what has arrived behind a saved cursor.
 * <p>May import {@code detect}, {@code series}, {@code finding}, {@code sky}, {@code visit}, {@code closed},
 * {@code outbox} and the collector's store.
 */
package org.duskline.analyzer.watch;
