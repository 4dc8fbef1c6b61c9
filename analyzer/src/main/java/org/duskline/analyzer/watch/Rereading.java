package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.wire.Sample;

/**
 * The last days as they are read again from the store where the folds begin anew, after a restart or a change of the line:
 * how far back that must go, and what it finds too late to be told.
 */
final class Rereading {
    /** As far back as a fold looks, with a day to settle. */
    private static final Duration USUAL = Duration.ofDays(10);

    /** Robbers of longer ago are no news, and the days before them are not all read again. */
    private static final Duration ROBBERS_ARE_NEWS = Duration.ofHours(36);

    private final Store store;
    private final FindingLog log;

    Rereading(Store store, FindingLog log) {
        this.store = store;
        this.log = log;
    }

    /** A sample that is read again, and where it was sensed. */
    record Reread(Fitting fitting, Sample sample) {}

    /** The samples of those days in order of receipt; none where nothing was analysed or heard yet. */
    List<Reread> samples(Fittings fittings, long cursor) {
        Instant newest = newestHeard();
        if (cursor == 0 || newest.equals(Instant.MAX)) {
            return List.of();
        }
        Instant from = from(newest);
        List<Reread> samples = new ArrayList<>();
        fittings.all().forEach(fitting -> {
            Instant start = fitting.from().isAfter(from) ? fitting.from() : from;
            if (start.isBefore(fitting.until())) {
                store.samples()
                        .read(
                                fitting.node(),
                                start,
                                fitting.until(),
                                sample -> samples.add(new Reread(fitting, sample)));
            }
        });
        samples.sort(Comparator.comparingLong(reread -> reread.sample().receivedMillis()));
        return samples;
    }

    /** Whether what those days bring was never told and is too long ago to be told now. */
    boolean isOldNews(Finding finding) {
        return finding.kind() == Kind.ROBBING
                && finding.onset().isBefore(newestHeard().minus(ROBBERS_ARE_NEWS))
                && log.ofTrap(finding.trap(), finding.onset(), finding.onset().plusMillis(1)).stream()
                        .noneMatch(known -> known.kind() == Kind.ROBBING);
    }

    /** A colony is followed from before it came, however long ago that was. */
    private Instant from(Instant newest) {
        Instant usual = newest.minus(USUAL);
        return log.standing().stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN)
                .map(finding -> finding.onset().minus(Duration.ofDays(toldLate(finding) ? 7 : 1)))
                .filter(onset -> onset.isBefore(usual))
                .min(Instant::compareTo)
                .orElse(usual);
    }

    /** What foragers bore out days after is borne out again only beside the empty days before. */
    private static boolean toldLate(Finding finding) {
        return Duration.between(finding.onset(), finding.raised()).toMillis() > Suspect.LATE_MILLIS;
    }

    /** {@link Instant#MAX} where nothing was heard yet. */
    private Instant newestHeard() {
        return store.nodes().all().stream()
                .map(node -> node.lastHeard())
                .max(Instant::compareTo)
                .orElse(Instant.MAX);
    }
}
