package org.duskline.analyzer.upkeep;

import java.time.Duration;

/**
 * The keeper's own limits.
 *
 * @param bait how long bait lasts; common practice is 1 to 3 weeks for scented oil
 * @param look how long a trap may go unseen; common practice, since a swarm should be moved within days and ants or birds
 *     take a trap within one
 * @param battery warning this long before a battery is empty; own choice
 * @param emptyVolts where the node stops; depends on its cells, 3.3 V for one lithium cell by common practice
 * @param unheard how long a node may be silent; own choice, above its longest batch
 */
public record UpkeepLimits(Duration bait, Duration look, Duration battery, double emptyVolts, Duration unheard) {
    public static final UpkeepLimits USUAL =
            new UpkeepLimits(Duration.ofDays(14), Duration.ofDays(7), Duration.ofDays(10), 3.3, Duration.ofHours(6));
}
