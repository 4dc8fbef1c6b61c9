package org.duskline.web.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.replay.Dial;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.Answer;

/**
 * The page on which thresholds are tried, adopted and gone back from.
 *
 * @param now the instant it was made
 * @param zone in which hours are told
 * @param loaded the finding that led here
 * @param traps of the line, by name
 * @param trap the one trap that is tuned; empty for the line
 * @param turns each threshold as it holds now
 * @param versions last to first
 * @param answered how many move-ins the keeper has said the truth of
 * @param until an exception's usual end
 * @param complaint why nothing was changed; empty where something was, or nobody tried
 */
public record TuningView(
        Instant now,
        ZoneId zone,
        Optional<Loaded> loaded,
        List<String> traps,
        Optional<String> trap,
        List<Turn> turns,
        List<Version> versions,
        int answered,
        LocalDate until,
        String complaint) {
    private static final ObjectMapper JSON = new ObjectMapper();

    /**
     * The finding that led here.
     *
     * @param strip its stretch of the curve
     * @param answer what the keeper said that it was
     * @param mark under which an answer given on this page is kept once, however often it is sent
     */
    public record Loaded(Finding finding, Strip strip, Optional<Answer> answer, String mark) {
        public String name() {
            return FindingAddress.of(finding);
        }
    }

    /**
     * A threshold to turn.
     *
     * @param value as it holds now
     */
    public record Turn(Dial dial, double value) {
        public int stop() {
            return dial.stopFor(value);
        }

        public int last() {
            return dial.stops().size() - 1;
        }

        public String said() {
            return dial.said(value);
        }

        /** Values and words of every stop, for the script. */
        public String stops() {
            try {
                return JSON.writeValueAsString(dial.stops().stream()
                        .map(stop -> List.of(stop, dial.said(stop)))
                        .toList());
            } catch (JsonProcessingException impossible) {
                throw new IllegalStateException("The stops of " + dial.key() + " can't be written.", impossible);
            }
        }
    }

    /**
     * A version that was adopted.
     *
     * @param inForce whether it holds now, on the line or at its trap
     */
    public record Version(Adopted adopted, ThresholdBook.Effect since, boolean inForce) {
        public String sinceWords() {
            if (since.told() == 0) {
                return "No move-in was told under it.";
            }
            return (since.told() == 1 ? "1 move-in" : since.told() + " move-ins") + " told under it, " + since.swarms()
                    + " answered a swarm, " + since.wrong() + " a false alarm.";
        }
    }
}
