/**
 * What was concluded and must be told, kept in the one SQLite file: findings as they stand, their history, and the
 * analyser's cursor, all in one transaction.
 * <p>May import {@code finding} and the collector's store. Decides nothing.
 */
package org.duskline.analyzer.outbox;
