package org.duskline.collector.wire;

/**
 * A message that could not be decoded, kept as it came.
 *
 * @param message the message, bytes untouched
 * @param reason what was wrong, for counting
 * @param detail what was wrong, in words, with the place where known
 */
public record Damage(Message message, DamageReason reason, String detail) {}
