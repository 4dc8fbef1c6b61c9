package org.duskline.collector.intake;

/**
 * A line of a recorded stream that is no message. Reading goes on behind it.
 *
 * @param file the file's name as given
 * @param line counts from 1
 * @param detail what is wrong with it
 */
public record SpoiltLine(String file, long line, String detail) {
    @Override
    public String toString() {
        return file + ":" + line + ": " + detail;
    }
}
