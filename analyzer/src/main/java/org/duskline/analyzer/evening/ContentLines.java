package org.duskline.analyzer.evening;

import java.nio.charset.StandardCharsets;

/** Folding of content lines as RFC 5545, section 3.1, asks: no line over 75 octets, no character torn apart. */
final class ContentLines {
    private static final int MOST_OCTETS = 75;
    private static final String END = "\r\n";

    private ContentLines() {}

    static String folded(String unfolded) {
        StringBuilder folded = new StringBuilder();
        for (String line : unfolded.split(END)) {
            int octets = 0;
            for (int i = 0; i < line.length(); ) {
                String character = Character.toString(line.codePointAt(i));
                int width = character.getBytes(StandardCharsets.UTF_8).length;
                if (octets + width > MOST_OCTETS) {
                    folded.append(END).append(' ');
                    octets = 1;
                }
                folded.append(character);
                octets += width;
                i += character.length();
            }
            folded.append(END);
        }
        return folded.toString();
    }
}
