package org.duskline.analyzer.evening;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The sheet as CSV by RFC 4180, units in the header, times in UTC. */
public final class SheetCsv {
    private static final String HEADER =
            "order,trap,state,latitude_deg,longitude_deg,flight_ends_utc,window_closes_utc,"
                    + "arrive_utc,leg_km_as_the_crow_flies,sure,box_kg,swarm_kg,lift_at_most_kg,why";

    private SheetCsv() {}

    public static String of(EveningSheet sheet) {
        List<String> rows = new ArrayList<>();
        rows.add(HEADER);
        for (Stop stop : sheet.round().stops()) {
            rows.add(row(
                    stop.number(),
                    stop.trap().name(),
                    "close",
                    stop.trap().latitude(),
                    stop.trap().longitude(),
                    stop.flightEnd().window().opens(),
                    stop.flightEnd().window().closes(),
                    stop.arrive(),
                    decimal(stop.legKm(), 2),
                    stop.moveIn().probability(),
                    decimal(stop.lift().boxKg(), 2),
                    decimal(stop.lift().swarmKg(), 2),
                    decimal(stop.lift().atMostKg(), 2),
                    stop.moveIn().summary()));
        }
        for (Doubtful each : sheet.doubtful()) {
            rows.add(row(
                    "",
                    each.trap().name(),
                    "doubtful",
                    each.trap().latitude(),
                    each.trap().longitude(),
                    each.flightEnd().window().opens(),
                    each.flightEnd().window().closes(),
                    "",
                    "",
                    each.moveIn().probability(),
                    "",
                    "",
                    "",
                    each.moveIn().summary()));
        }
        for (AlreadyClosed each : sheet.closed()) {
            rows.add(row(
                    "",
                    each.trap().name(),
                    "closed",
                    each.trap().latitude(),
                    each.trap().longitude(),
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    "closed by " + each.by() + " at " + each.since().truncatedTo(ChronoUnit.SECONDS)));
        }
        return String.join("\r\n", rows) + "\r\n";
    }

    private static String row(Object... cells) {
        List<String> texts = new ArrayList<>();
        for (Object cell : cells) {
            texts.add(quoted(cell instanceof Instant time ? time.truncatedTo(ChronoUnit.SECONDS) : cell));
        }
        return String.join(",", texts);
    }

    private static String quoted(Object cell) {
        String text = cell.toString();
        return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }

    private static String decimal(double value, int decimals) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
