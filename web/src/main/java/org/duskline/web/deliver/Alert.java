package org.duskline.web.deliver;

import java.time.Instant;
import java.util.Optional;

/**
 * One step of one happening, as told to one person through one channel.
 *
 * @param id the number under which it is kept
 * @param thread the happening: trap, kind and onset
 * @param step the step within it, such as {@code RAISED-1}
 * @param trap the trap, if it is about one
 * @param title one line
 * @param words the whole, in the keeper's words
 * @param object the same for programs, one JSON object
 * @param written when it was put into the outbox
 */
public record Alert(
        long id,
        String thread,
        String step,
        Optional<String> trap,
        String title,
        String words,
        String object,
        Instant written) {}
