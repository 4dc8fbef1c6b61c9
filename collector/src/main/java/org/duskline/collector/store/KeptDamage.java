package org.duskline.collector.store;

import org.duskline.collector.wire.Damage;

/**
 * A damaged message as it is kept.
 *
 * @param number counts in the order of storing
 * @param damage the message with the reason
 */
public record KeptDamage(long number, Damage damage) {}
