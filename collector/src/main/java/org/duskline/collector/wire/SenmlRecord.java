package org.duskline.collector.wire;

/**
 * One SenML record with the base fields applied (RFC 8428 section 4.6), its time still as sent.
 *
 * @param name base name and name together
 * @param unit the record's or the base unit; empty if neither was sent
 * @param seconds base time and time together: from 2^28 on absolute Unix seconds, below that relative to now (4.5.3)
 * @param kind which of the value fields was sent
 * @param value the number with the base value added; NaN unless {@code kind} is NUMBER
 * @param text the string, the base64url text or the boolean in words; empty for a number
 * @param sum the sum with the base sum added; NaN if neither was sent
 */
public record SenmlRecord(
        String name, String unit, double seconds, ValueKind kind, double value, String text, double sum) {

    /** From this many seconds on a time is absolute: 2^28, 1978-07-04T21:24:16Z (RFC 8428 section 4.5.3). */
    public static final double FIRST_ABSOLUTE_SECOND = 268_435_456d;

    /** Which value field a record carries. */
    public enum ValueKind {
        NUMBER,
        TEXT,
        FLAG,
        DATA,
        /** A sum alone. */
        NONE
    }
}
