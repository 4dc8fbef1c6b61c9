package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.stats.Robust;

/**
 * The case that robbers stripped comb on one day, asked when the night after is over. They take by hours what drying takes by
 * days, so no one number tells them; what decides is that the box lost more than the others and than it usually does, bit by
 * bit, through most of the day, and stands lower than before. The size of each piece was set on twenty-eight synthetic seasons
 * of this project.
 *
 * @param day what was lost
 * @param logOdds natural logarithm of the odds
 * @param evidence what speaks for and against
 * @param rivals probability of each explanation
 */
public record StrippedDay(DayLoss day, double logOdds, List<Evidence> evidence, Map<Rival, Double> rivals) {
    /** So many of the days before are looked at. */
    public static final int REMEMBERED_DAYS = 8;

    /** Of a box that is known for fewer days nobody can say what is usual. */
    public static final int ENOUGH_DAYS = 3;

    /** Where no piece speaks for or against. */
    private static final double PRIOR = -2;

    private static final long DAY = 24 * 3_600_000L;
    private static final double LEAST_SCATTER_KG = 0.03;

    /** Less is no loss that a share could be taken of, kg; own choice. */
    private static final double LEAST_LOSS_KG = 0.05;

    /** A box that fell or rose by so much in a day beside the others hangs on another zero point since, or is another; kg. */
    private static final double ANOTHER_LEVEL_KG = 0.6;

    private static final double KEEPER_WAS_THERE = -3;

    /**
     * Weighs one day.
     *
     * @param before the days before it on which the box was empty too, oldest first, at least {@link #ENOUGH_DAYS}
     * @param busiestPerMinute the traffic of its busiest two and a half hours; empty where nothing is counted
     * @param keeperWasThere whether a visit in that time was recorded
     */
    public static StrippedDay weigh(
            DayLoss day, List<DayLoss> before, OptionalDouble busiestPerMinute, boolean keeperWasThere) {
        Odds odds = new Odds(PRIOR);
        lost(odds, day, before);
        gradually(odds, day);
        lower(odds, day, before);
        busiestPerMinute.ifPresent(busy -> odds.add(
                Odds.through(busy, 0, -2.6, 1, -0.9, 2, -0.8, 4, 0.6, 8, 1.8, 16, 2.6),
                "%.1f crossings a minute in that day's busiest two and a half hours",
                busy));
        odds.add(keeperWasThere ? KEEPER_WAS_THERE : 0, "the keeper was at the trap");
        double robbers = odds.probability();
        return new StrippedDay(
                day,
                odds.logOdds(),
                odds.weightiestFirst(),
                Map.of(
                        Rival.ROBBERS, robbers,
                        Rival.RAIN, (1 - robbers) * 0.6,
                        Rival.TARE_SHIFT, (1 - robbers) * 0.2,
                        Rival.HANDS, (1 - robbers) * 0.2));
    }

    /** The day's loss in words. */
    public String said() {
        return String.format(
                Locale.ROOT,
                "%.2f kg lost from night to night; the other boxes %s %.2f kg",
                day.fallKg(),
                day.othersFallKg() < 0 ? "gained" : "lost",
                Math.abs(day.othersFallKg()));
    }

    private static void lost(Odds odds, DayLoss day, List<DayLoss> before) {
        odds.add(
                Odds.through(day.beyondKg(), 0, -1.2, 0.1, 0, 0.2, 0.5),
                "lost %.2f kg more than the other boxes from night to night",
                day.beyondKg());
        double usual = Robust.mad(before.stream().mapToDouble(DayLoss::beyondKg).toArray());
        double scatter = Math.hypot(Math.hypot(usual, day.othersScatterKg()), LEAST_SCATTER_KG);
        double times = day.beyondKg() / scatter;
        odds.add(
                Odds.through(times, 0, -1.5, 1, -1.2, 2, 0.4, 4, 1.3, 7, 1),
                "lost %.1f times as much beside the others as such days differ by",
                times);
    }

    private static void gradually(Odds odds, DayLoss day) {
        double share = day.largestFallKg() / Math.max(LEAST_LOSS_KG, day.beyondKg());
        odds.add(
                Odds.through(share, 0.1, 1, 0.3, 0.4, 0.6, 0, 0.9, -2, 1.5, -4),
                "the most at once was %.2f kg; a zero point that jumps and hands take all at once",
                day.largestFallKg());
        if (!Double.isNaN(day.evenShare())) {
            odds.add(
                    Odds.through(day.evenShare(), 0.3, -0.8, 0.5, 0, 0.7, 0.7, 0.9, 0.9),
                    "it lost more than the others in %.0f %% of the day's hours",
                    100 * day.evenShare());
        }
    }

    private static void lower(Odds odds, DayLoss day, List<DayLoss> before) {
        double below = belowLowestKg(day, before);
        odds.add(
                Odds.through(below, -0.2, -1.4, 0, 0, 0.08, 0.8),
                below > 0
                        ? "%.2f kg lower than in any night of the days before, the others' drying aside"
                        : "it had been %.2f kg lower in the days before, the others' drying aside",
                Math.abs(below));
        DayLoss last = before.get(before.size() - 1);
        if (day.noonMillis() - last.noonMillis() < 1.5 * DAY) {
            odds.add(
                    Odds.through(last.beyondKg(), -0.3, -1.5, -0.15, -1, -0.03, 0),
                    "the day before it gained %.2f kg more than the others, which dries",
                    -last.beyondKg());
        }
    }

    /** How much lower it stands than in any night before, beyond what drew the other boxes lower; negative where it stood lower. */
    private static double belowLowestKg(DayLoss day, List<DayLoss> before) {
        double lowest = day.beforeKg();
        double othersLost = 0;
        double othersMost = 0;
        for (DayLoss each : before.subList(sinceAnotherLevel(before), before.size())) {
            lowest = Math.min(lowest, each.afterKg());
            othersLost += each.othersFallKg();
            othersMost = Math.max(othersMost, othersLost);
        }
        double othersBelow = Math.max(0, othersLost + day.othersFallKg() - othersMost);
        return lowest - day.afterKg() - othersBelow;
    }

    private static int sinceAnotherLevel(List<DayLoss> before) {
        int from = before.size();
        while (from > 0 && Math.abs(before.get(from - 1).beyondKg()) < ANOTHER_LEVEL_KG) {
            from--;
        }
        return from;
    }
}
