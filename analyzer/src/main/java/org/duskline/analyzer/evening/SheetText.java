package org.duskline.analyzer.evening;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** The sheet as plain text for one printed page. */
public final class SheetText {
    private final EveningSheet sheet;
    private final ZoneId zone;

    private SheetText(EveningSheet sheet) {
        this.sheet = sheet;
        this.zone = sheet.zone();
    }

    public static String of(EveningSheet sheet) {
        List<String> lines = new ArrayList<>();
        SheetText text = new SheetText(sheet);
        lines.add("Tonight, " + sheet.evening() + " (times " + sheet.zone() + ", made "
                + SheetWords.hour(sheet.made(), text.zone) + ")");
        text.round(lines);
        text.closed(lines);
        text.doubtful(lines);
        text.list(lines, "Bring", sheet.bring());
        text.list(lines, "Mind", sheet.cautions().stream().map(Caution::said).toList());
        return String.join("\n", lines) + "\n";
    }

    private void round(List<String> lines) {
        Round round = sheet.round();
        lines.add("");
        if (round.stops().isEmpty()) {
            lines.add("No trap to close tonight.");
            return;
        }
        lines.add("To close: " + round.stops().size() + ". Leave at "
                + SheetWords.hour(round.leave().orElseThrow(), zone) + ", back at "
                + SheetWords.hour(round.homeAt().orElseThrow(), zone) + "; "
                + SheetWords.km(round.km()) + " as the crow flies (roads are longer), "
                + SheetWords.length(round.total()) + " in all.");
        round.stops().forEach(stop -> stop(lines, stop));
        if (round.homeKm() > 0) {
            lines.add("   Home: " + SheetWords.km(round.homeKm()));
        }
    }

    private void stop(List<String> lines, Stop stop) {
        FlightEnd end = stop.flightEnd();
        ZoneId local = stop.trap().zone();
        lines.add("");
        lines.add(stop.number() + ". " + stop.trap().name() + "   " + SheetWords.km(stop.legKm()) + ", there at "
                + SheetWords.hour(stop.arrive(), zone) + (stop.late() ? "   TOO LATE: bees may fly again" : ""));
        lines.add("   Close " + SheetWords.window(end.window(), local) + ", best from "
                + SheetWords.hour(stop.close(), local) + " (flight ends: " + end.reason() + ")");
        lines.add("   " + SheetWords.percent(stop.moveIn().probability()) + " sure: "
                + stop.moveIn().summary());
        lines.add("   Lift " + stop.lift().said() + (stop.lift().takesTwo() ? "; two people" : ""));
        lines.add("   " + stop.geo());
    }

    private void closed(List<String> lines) {
        List<String> closed = sheet.closed().stream()
                .map(each -> each.trap().name() + ", closed at "
                        + SheetWords.hour(each.since(), each.trap().zone()) + " on "
                        + each.since().atZone(each.trap().zone()).toLocalDate() + " by " + each.by())
                .toList();
        list(lines, "Closed already, to be fetched", closed);
    }

    private void doubtful(List<String> lines) {
        for (Doubtful each : sheet.doubtful()) {
            lines.add("");
            lines.add("Not sure: " + each.trap().name() + ", "
                    + SheetWords.percent(each.moveIn().probability()) + ". "
                    + each.moveIn().summary());
            each.settles().forEach(settle -> lines.add("   - " + settle));
        }
    }

    private void list(List<String> lines, String heading, List<String> entries) {
        if (entries.isEmpty()) {
            return;
        }
        lines.add("");
        lines.add(heading + ":");
        entries.forEach(entry -> lines.add("   - " + entry));
    }
}
