package org.duskline.analyzer.replay;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;

/**
 * What a replay brought.
 *
 * @param told everything told, in the order in which it was first raised
 * @param days the days (since 1970, UTC) on which each trap was heard
 * @param samples how many samples were folded
 */
public record Played(List<Told> told, Map<String, SortedSet<Long>> days, long samples) {
    public Played {
        told = List.copyOf(told);
        days = Map.copyOf(days);
    }

    /** What had been told by a moment; the days stay. For setting beside a run that has come as far. */
    public Played before(Instant moment) {
        return new Played(
                told.stream()
                        .filter(one -> one.first().raised().isBefore(moment))
                        .toList(),
                days,
                samples);
    }
}
