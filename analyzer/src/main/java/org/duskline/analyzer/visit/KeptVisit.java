package org.duskline.analyzer.visit;

import java.time.Instant;

/**
 * One edition of a visit as it stands in the log. A visit that is corrected gets a further edition; none is ever lost.
 *
 * @param entry grows with each edition written to the log, of whichever visit; a reader's cursor
 * @param id the visit's number
 * @param edition 1 as first written, one more with each correction
 * @param visit what it says
 * @param written when this edition was written
 * @param writtenBy who wrote it
 * @param struck whether it says that the visit never was
 */
public record KeptVisit(
        long entry, long id, int edition, Visit visit, Instant written, String writtenBy, boolean struck) {}
