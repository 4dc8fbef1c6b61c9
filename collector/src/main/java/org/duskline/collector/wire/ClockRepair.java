package org.duskline.collector.wire;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Places the samples of a pack in time, whatever the node's clock says.
 *
 * <p>A stamp is right if it lies between {@link #OLDEST} before the receipt and {@link #AHEAD} after it; the pack of a
 * clock that is slightly ahead is shifted so that its newest sample falls on the receipt. It is relative (RFC 8428
 * section 4.5.3) if it is at or before now. Anything else comes from a wrong clock: small positive numbers are the
 * seconds since a start without a clock, 2000-01-01 is where a common clock chip starts, and so on. Such a clock still
 * measures intervals, so its samples are placed by one constant per {@link ClockRun}.
 */
public final class ClockRepair {
    /** A stamp older than this against its receipt is no backlog but a wrong clock. More than a season, with room. */
    static final Duration OLDEST = Duration.ofDays(400);
    /** A clock that is ahead by less is a quartz that drifts, not a clock that was never set. */
    static final Duration AHEAD = Duration.ofMinutes(5);
    /** A drift below this is nobody's concern; above it samples are marked. */
    static final Duration UNREMARKABLE = Duration.ofMinutes(1);
    /** How long a board is expected to store samples without a clock and still deliver them. */
    private static final Duration LONGEST_BACKLOG = Duration.ofDays(60);
    /** A run whose constant would fall by more than this was not late: the stamp is damaged or the clock was changed. */
    private static final Duration LONGEST_CORRECTION = Duration.ofDays(14);
    /** Radio and broker vary by this much; samples are not moved for it. */
    private static final long JITTER_MILLIS = 5_000;
    /** Rounding of a relative time may put "now" this far into the future, s. */
    private static final double NOW_SECONDS = 1;

    private ClockRepair() {}

    /** Whether placing the pack needs the node's known runs. */
    public static boolean needsRuns(ReadingPack pack, long receivedMillis) {
        double newestRelative = newestRelative(pack);
        for (RawSample sample : pack.samples()) {
            if (isWrong(sample, newestRelative, receivedMillis)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Places a pack.
     *
     * @param receivedMillis when it reached us, Unix ms
     * @param runs the runs known of the node, latest first; may be empty if {@link #needsRuns} says no
     */
    public static TimedPack place(ReadingPack pack, long receivedMillis, List<ClockRun> runs) throws UnreadableMessage {
        double newestRelative = newestRelative(pack);
        List<RawSample> wrong = new ArrayList<>();
        List<Sample> placed = new ArrayList<>(pack.samples().size());
        long ahead = aheadMillis(pack, receivedMillis);
        int aheadMark = ahead > UNREMARKABLE.toMillis() ? Mark.CLOCK_REPAIRED.bit() : 0;
        for (RawSample sample : pack.samples()) {
            if (isWrong(sample, newestRelative, receivedMillis)) {
                wrong.add(sample);
            } else if (sample.isAbsolute()) {
                placed.add(sample.at(millis(sample) - ahead, receivedMillis, aheadMark));
            } else {
                long time = receivedMillis + Math.min(0, millis(sample));
                placed.add(sample.at(time, receivedMillis, Mark.RELATIVE_TIME.bit()));
            }
        }
        if (wrong.isEmpty()) {
            return ordered(placed, null, 0);
        }
        return withWrong(pack, placed, wrong, receivedMillis, runs);
    }

    private static TimedPack withWrong(
            ReadingPack pack, List<Sample> placed, List<RawSample> wrong, long receivedMillis, List<ClockRun> runs)
            throws UnreadableMessage {
        double first = wrong.get(0).seconds();
        double newest = wrong.get(wrong.size() - 1).seconds();
        if (newest - first > LONGEST_BACKLOG.toSeconds()) {
            throw new UnreadableMessage(
                    DamageReason.TIME, "Its times lie " + Math.round((newest - first) / 86_400) + " days apart.");
        }
        long latest = receivedMillis;
        for (Sample right : placed) {
            // A clock that was set while the pack was filled: what came before the setting was measured before.
            latest = right.marked(Mark.RELATIVE_TIME) ? latest : Math.min(latest, right.timeMillis());
        }
        long offset = latest - Math.round(newest * 1000);
        ClockRun known = find(pack, first, newest, offset, runs);
        ClockRun run = known == null
                ? new ClockRun(0, pack.boot(), pack.seq(), first, newest, offset)
                : new ClockRun(
                        known.id(),
                        known.boot(),
                        Math.max(known.seq(), pack.seq()),
                        Math.min(known.firstSeconds(), first),
                        Math.max(known.newestSeconds(), newest),
                        Math.min(known.offsetMillis(), offset));
        for (RawSample sample : wrong) {
            placed.add(sample.at(run.offsetMillis() + millis(sample), receivedMillis, Mark.CLOCK_REPAIRED.bit()));
        }
        long earlierBy = known == null ? 0 : known.offsetMillis() - run.offsetMillis();
        return ordered(placed, run, earlierBy > JITTER_MILLIS ? earlierBy : 0);
    }

    private static TimedPack ordered(List<Sample> placed, ClockRun run, long earlierBy) {
        placed.sort(Comparator.comparingLong(Sample::timeMillis));
        return new TimedPack(List.copyOf(placed), run, earlierBy);
    }

    private static ClockRun find(ReadingPack pack, double first, double newest, long offset, List<ClockRun> runs) {
        for (ClockRun run : runs) {
            long late = offset - run.offsetMillis();
            boolean near = late <= LONGEST_BACKLOG.toMillis() && -late <= LONGEST_CORRECTION.toMillis();
            if (near && isSameKind(run, newest) && run.boot() == pack.boot()) {
                boolean same = pack.boot() >= 0 || !hasRestarted(pack, first, newest, offset, run);
                return same ? run : null;
            }
        }
        return null;
    }

    private static boolean isSameKind(ClockRun run, double newest) {
        return (run.newestSeconds() >= SenmlRecord.FIRST_ABSOLUTE_SECOND)
                == (newest >= SenmlRecord.FIRST_ABSOLUTE_SECOND);
    }

    /**
     * Whether a node that doesn't count its starts has started again: its stamps fell back, and it can have been
     * switched on after the newest sample of the run. If it cannot, the pack is an old one that comes late.
     */
    private static boolean hasRestarted(ReadingPack pack, double first, double newest, long offset, ClockRun run) {
        if (newest > run.newestSeconds()) {
            return pack.seq() >= 0 && pack.seq() < run.seq();
        }
        double zero = newest < SenmlRecord.FIRST_ABSOLUTE_SECOND ? 0 : Math.min(first, run.firstSeconds());
        long latestStart = offset + Math.round(zero * 1000);
        return latestStart >= run.newestMillis();
    }

    private static double newestRelative(ReadingPack pack) {
        double newest = Double.NEGATIVE_INFINITY;
        for (RawSample sample : pack.samples()) {
            newest = sample.isAbsolute() ? newest : Math.max(newest, sample.seconds());
        }
        return newest;
    }

    private static boolean isWrong(RawSample sample, double newestRelative, long receivedMillis) {
        if (!sample.isAbsolute()) {
            return newestRelative > NOW_SECONDS || sample.seconds() < -OLDEST.toSeconds();
        }
        double age = receivedMillis - sample.seconds() * 1000;
        return age > OLDEST.toMillis() || -age > AHEAD.toMillis();
    }

    private static long aheadMillis(ReadingPack pack, long receivedMillis) {
        long ahead = 0;
        for (RawSample sample : pack.samples()) {
            if (sample.isAbsolute() && !isWrong(sample, Double.NEGATIVE_INFINITY, receivedMillis)) {
                ahead = Math.max(ahead, millis(sample) - receivedMillis);
            }
        }
        return ahead;
    }

    private static long millis(RawSample sample) {
        return Math.round(sample.seconds() * 1000);
    }
}
