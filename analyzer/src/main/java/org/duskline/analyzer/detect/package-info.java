/**
 * Detection: pure rules from a trap's series and its surroundings to evidence and odds. No clock, no thread, no I/O.
 * <p>May import {@code series}, {@code stats} and {@code finding}. Keeps no state between calls; what must be remembered
 * is remembered by {@code watch}.
 */
package org.duskline.analyzer.detect;
