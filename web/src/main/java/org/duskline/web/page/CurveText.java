package org.duskline.web.page;

import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.curve.CurveRow;
import org.duskline.analyzer.curve.CurveTable;

/**
 * A curve for those who read it instead of seeing it: a few sentences and a table.
 *
 * @param sentences what the stretch shows
 * @param rows the table
 * @param byTheHour whether its rows are hours; days otherwise
 */
public record CurveText(String sentences, List<CurveRow> rows, boolean byTheHour) {

    static CurveText of(CurveTable table, ZoneId zone) {
        List<CurveRow> rows = table.rows();
        return new CurveText(sentences(rows, table.byTheHour(), zone), rows, table.byTheHour());
    }

    /** How a row is named: "Tue 12 May, 13:00" or "Tue 12 May". */
    public String name(CurveRow row, ZoneId zone) {
        String day = Words.shortDay(row.from(), zone);
        return byTheHour ? day + ", " + Words.clock(row.from(), zone) : day;
    }

    public static String bees(double number) {
        return Double.isNaN(number) ? "–" : String.format(Locale.ENGLISH, "%,.0f", number);
    }

    private static String sentences(List<CurveRow> rows, boolean byTheHour, ZoneId zone) {
        if (rows.stream().allMatch(row -> row.samples() == 0)) {
            return "No samples in this stretch.";
        }
        StringBuilder text = new StringBuilder();
        traffic(rows, byTheHour, zone, text);
        weight(rows, text);
        long silent = rows.stream().filter(row -> row.samples() == 0).count();
        if (silent > 0) {
            text.append(Words.count(silent, byTheHour ? "hour" : "day", byTheHour ? "hours" : "days"))
                    .append(" without a sample.");
        }
        return text.toString().strip();
    }

    private static void traffic(List<CurveRow> rows, boolean byTheHour, ZoneId zone, StringBuilder text) {
        Optional<CurveRow> busiest = rows.stream()
                .filter(row -> !Double.isNaN(row.busiestPerMinute()))
                .max(Comparator.comparingDouble(CurveRow::busiestPerMinute));
        busiest.ifPresent(row -> text.append(bees(sum(rows, true)))
                .append(" bees in, ")
                .append(bees(sum(rows, false)))
                .append(" out. Busiest ")
                .append(byTheHour ? "in the hour from " + Words.clock(row.from(), zone) : "on")
                .append(byTheHour ? " on " : " ")
                .append(Words.shortDay(row.from(), zone))
                .append(", with up to ")
                .append(Words.perMinute(row.busiestPerMinute()))
                .append(" a minute inward. "));
    }

    private static void weight(List<CurveRow> rows, StringBuilder text) {
        List<CurveRow> weighed =
                rows.stream().filter(row -> !Double.isNaN(row.lastWeightKg())).toList();
        if (weighed.isEmpty()) {
            return;
        }
        double first = weighed.get(0).firstWeightKg();
        double last = weighed.get(weighed.size() - 1).lastWeightKg();
        text.append("Weight from ")
                .append(Words.kg(first))
                .append(" to ")
                .append(Words.kg(last))
                .append(" kg, ")
                .append(last < first ? "" : "+")
                .append(Words.kg(last - first))
                .append(" kg. ");
    }

    private static double sum(List<CurveRow> rows, boolean inward) {
        return rows.stream()
                .mapToDouble(row -> inward ? row.beesIn() : row.beesOut())
                .filter(bees -> !Double.isNaN(bees))
                .sum();
    }
}
