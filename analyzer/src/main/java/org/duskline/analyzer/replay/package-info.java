/**
 * What would have been told under other thresholds: everything recorded is run again, compared with now, priced, and
 * kept as a version that can be gone back to. Runs on its caller's thread; the recorded findings are never touched.
 * <p>May import {@code watch}, {@code detect}, {@code finding}, {@code visit}, {@code outbox}, {@code stats}, for ballast
 * {@code season} and {@code prove}, and the
 * collector's store. No page and no command line belongs here.
 */
package org.duskline.analyzer.replay;
