/**
 * What keepers did and said: visits at traps, answers to findings, and the log of both in the one SQLite file.
 * <p>May import {@code finding} and the collector's store, and speaks SQL for its own tables only. Everything is
 * appended, nothing overwritten. Which visit explains which signal never belongs here.
 */
package org.duskline.analyzer.visit;
