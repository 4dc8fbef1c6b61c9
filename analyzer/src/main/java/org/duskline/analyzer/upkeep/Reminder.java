package org.duskline.analyzer.upkeep;

import java.time.Instant;

/**
 * Something to be done at a trap when there is time.
 *
 * @param what the chore
 * @param trap the trap's name
 * @param since when it became due
 * @param said one line in the keeper's words, with numbers
 */
public record Reminder(What what, String trap, Instant since, String said) {
    public enum What {
        BAIT,
        BATTERY,
        UNHEARD,
        LOOK
    }
}
