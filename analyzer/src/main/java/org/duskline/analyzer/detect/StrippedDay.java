package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.stats.Robust;

/**
 * The case that robbers stripped comb on one day, asked when the night after is over. They take by hours what drying takes by
 * days, so no one number tells them; what decides is that the box lost more than the others and than it usually does, bit by
 * bit, through most of the day, and stands lower than before. The size of each piece was set on twenty-eight synthetic seasons
 * of this project.
 */
public final class StrippedDay {
    /** So many of the days before are looked at, and for the lowest night so many. */
    public static final int REMEMBERED_DAYS = 12;

    private static final int LOWEST_OF_DAYS = 8;

    /** With every piece at nought; robbed was one day in ninety. */
    private static final double PRIOR = -2;

    private static final long DAY = 24 * 3_600_000L;
    private static final int ENOUGH_DAYS = 3;

    /** Boxes differ about so much from day to day; own choice. */
    private static final double UNKNOWN_SCATTER_KG = 0.08;

    private static final double LEAST_SCATTER_KG = 0.03;

    /** Less is no loss that a share could be taken of, kg; own choice. */
    private static final double LEAST_LOSS_KG = 0.05;

    private static final double KEEPER_WAS_THERE = -3;

    private StrippedDay() {}

    /**
     * Weighs one day.
     *
     * @param before the days before it on which the box was empty too, oldest first
     * @param busiestPerMinute the traffic of its busiest two and a half hours; empty without a counter
     * @param keeperWasThere whether a visit in that time was recorded
     */
    public static RobbingCase weigh(
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
        return new RobbingCase(
                day.beganMillis(),
                odds.logOdds(),
                odds.weightiestFirst(),
                Map.of(
                        Rival.ROBBERS, robbers,
                        Rival.RAIN, (1 - robbers) * 0.6,
                        Rival.TARE_SHIFT, (1 - robbers) * 0.2,
                        Rival.HANDS, (1 - robbers) * 0.2));
    }

    private static void lost(Odds odds, DayLoss day, List<DayLoss> before) {
        odds.add(
                Odds.through(day.beyondKg(), 0, -1.2, 0.1, 0, 0.2, 0.5),
                "lost %.2f kg from night to night; the other boxes %.2f kg",
                day.fallKg(),
                day.othersFallKg());
        double scatter = Math.hypot(Math.hypot(usualScatterKg(before), day.othersScatterKg()), LEAST_SCATTER_KG);
        double times = day.beyondKg() / scatter;
        odds.add(
                Odds.through(times, 0, -1.5, 1, -1.2, 2, 0.4, 4, 1.3, 7, 1),
                "that is %.1f times what such days differ by",
                times);
    }

    private static double usualScatterKg(List<DayLoss> before) {
        return before.size() < ENOUGH_DAYS
                ? UNKNOWN_SCATTER_KG
                : Robust.mad(before.stream().mapToDouble(DayLoss::beyondKg).toArray());
    }

    private static void gradually(Odds odds, DayLoss day) {
        odds.add(
                Odds.through(
                        day.largestFallKg() / Math.max(LEAST_LOSS_KG, day.beyondKg()),
                        0.1,
                        1,
                        0.3,
                        0.4,
                        0.6,
                        0,
                        0.9,
                        -2),
                "the most within half an hour was %.2f kg; a zero point that jumps and hands take all at once",
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
                below > 0 ? "%.2f kg lower than ever in eight days" : "it was %.2f kg lower within eight days",
                Math.abs(below));
        if (!before.isEmpty()
                && day.noonMillis() - before.get(before.size() - 1).noonMillis() < 1.5 * DAY) {
            double yesterday = before.get(before.size() - 1).beyondKg();
            odds.add(
                    Odds.through(yesterday, -0.3, -1.5, -0.15, -1, -0.03, 0),
                    "the day before it gained %.2f kg more than the others, which dries",
                    -yesterday);
        }
    }

    /** How much lower it stands than in any night before, beyond what drew the other boxes lower; negative where it stood lower. */
    private static double belowLowestKg(DayLoss day, List<DayLoss> before) {
        List<DayLoss> last = before.subList(Math.max(0, before.size() - LOWEST_OF_DAYS), before.size());
        double lowest = day.beforeKg();
        double othersLost = 0;
        double othersMost = 0;
        for (DayLoss each : last) {
            lowest = Math.min(lowest, each.afterKg());
            othersLost += each.othersFallKg();
            othersMost = Math.max(othersMost, othersLost);
        }
        double othersBelow = Math.max(0, othersLost + day.othersFallKg() - othersMost);
        return lowest - day.afterKg() - othersBelow;
    }

    /** The traffic of the busiest two and a half hours of the day around a noon; empty where none was heard whole. */
    public static OptionalDouble busiestPerMinute(TrapSeries series, long noonMillis) {
        OptionalDouble busiest = OptionalDouble.empty();
        long step = 10 * 60_000L;
        for (long end = noonMillis - DAY / 5; end <= noonMillis + 3 * DAY / 8; end += step) {
            int at = series.lastAt(end);
            if (at > 0) {
                Traffic traffic = Traffic.over(series, end - RobbingCase.WINDOW, at);
                boolean whole = traffic.minutes() >= 100 && traffic.minutes() <= 240;
                busiest = whole ? OptionalDouble.of(Math.max(busiest.orElse(0), traffic.perMinute())) : busiest;
            }
        }
        return busiest;
    }
}
