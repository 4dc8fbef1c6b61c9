package org.duskline.analyzer.replay;

import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;

/** Takes down what one run tells. One thread. */
final class Notes {
    private static final long DAY_MILLIS = 86_400_000;

    private record Identity(String trap, Kind kind, Instant onset) {}

    private final Instant from;
    private final Instant until;
    private final Map<Identity, Told> told = new LinkedHashMap<>();
    private final Map<String, BitSet> days = new HashMap<>();
    private long samples;

    Notes(Instant from, Instant until) {
        this.from = from;
        this.until = until;
    }

    void heard(String trap, long firstMillis, long lastMillis, int count) {
        BitSet ofTrap = days.computeIfAbsent(trap, name -> new BitSet());
        for (long day = Math.max(0, firstMillis / DAY_MILLIS); day <= lastMillis / DAY_MILLIS; day++) {
            ofTrap.set((int) day);
        }
        samples += count;
    }

    void told(List<Finding> changes) {
        for (Finding finding : changes) {
            told.merge(
                    new Identity(finding.trap(), finding.kind(), finding.onset()),
                    new Told(finding, finding),
                    (before, now) -> new Told(before.first(), now.last()));
        }
    }

    Played played() {
        List<Told> inStretch = new ArrayList<>();
        for (Told one : told.values()) {
            if (!one.first().raised().isBefore(from) && one.first().raised().isBefore(until)) {
                inStretch.add(one);
            }
        }
        Map<String, SortedSet<Long>> copy = new TreeMap<>();
        days.forEach((trap, ofTrap) -> copy.put(
                trap,
                ofTrap.stream()
                        .filter(this::inStretch)
                        .mapToObj(day -> (long) day)
                        .collect(Collectors.toCollection(TreeSet::new))));
        return new Played(inStretch, copy, samples);
    }

    private boolean inStretch(int day) {
        Instant begins = Instant.ofEpochMilli(day * DAY_MILLIS);
        return begins.plusMillis(DAY_MILLIS).isAfter(from) && begins.isBefore(until);
    }
}
