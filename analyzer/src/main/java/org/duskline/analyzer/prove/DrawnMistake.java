package org.duskline.analyzer.prove;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.duskline.analyzer.finding.Evidence;

/**
 * A mistake with its picture, kept after its season is gone.
 *
 * @param season which season, in words
 * @param svg the hours around it
 */
record DrawnMistake(Mistake mistake, String season, String svg) {
    private static final int PIECES = 4;

    /** A paragraph in Markdown, with the picture's name put in. */
    String markdown(int number, String picture) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "## %d. %s%n%n%s, trap %s (%s, every %d s), %s. Nearest true cause: %s.%n%n![%s](%s)%n",
                number,
                mistake.what(),
                season,
                mistake.trap().trap(),
                mistake.trap().fitted(),
                mistake.trap().periodS(),
                Instant.ofEpochSecond((long) mistake.second()),
                mistake.cause(),
                mistake.what(),
                picture));
        List<Evidence> evidence = mistake.evidence();
        for (Evidence piece : evidence.subList(0, Math.min(PIECES, evidence.size()))) {
            text.append(String.format(Locale.ROOT, "%n- %+.1f: %s", piece.logOdds(), piece.said()));
        }
        return text.append(evidence.isEmpty() ? "\n" : "\n\n").toString();
    }
}
