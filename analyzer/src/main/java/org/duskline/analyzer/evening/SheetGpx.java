package org.duskline.analyzer.evening;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.trap.Trap;

/** The sheet as GPX 1.1: a waypoint for every trap on it, and the round from home and back as a route. */
public final class SheetGpx {
    private SheetGpx() {}

    /**
     * Writes the file.
     *
     * @param home where the route begins and ends, if anywhere
     */
    public static String of(EveningSheet sheet, Optional<Place> home) {
        GPX.Builder gpx = GPX.builder("Duskline");
        List<WayPoint> round = new ArrayList<>();
        home.ifPresent(place -> round.add(point(place.latitude(), place.longitude(), "Home", "")));
        for (Stop stop : sheet.round().stops()) {
            WayPoint point = point(
                    stop.trap(),
                    "Close "
                            + SheetWords.window(
                                    stop.flightEnd().window(), stop.trap().zone()) + "; lift "
                            + stop.lift().said());
            gpx.addWayPoint(point);
            round.add(point);
        }
        home.ifPresent(place -> round.add(point(place.latitude(), place.longitude(), "Home", "")));
        sheet.doubtful()
                .forEach(each -> gpx.addWayPoint(
                        point(each.trap(), "Not sure: " + each.moveIn().summary())));
        sheet.closed().forEach(each -> gpx.addWayPoint(point(each.trap(), "Closed already, to be fetched")));
        if (!sheet.round().stops().isEmpty()) {
            gpx.addRoute(Route.builder()
                    .name("Evening of " + sheet.evening() + ", as the crow flies")
                    .points(round)
                    .build());
        }
        return written(gpx.build());
    }

    private static WayPoint point(Trap trap, String description) {
        return point(trap.latitude(), trap.longitude(), trap.name(), description);
    }

    private static WayPoint point(double latitude, double longitude, String name, String description) {
        WayPoint.Builder point = WayPoint.builder()
                .lat(latitude)
                .lon(longitude == 180 ? -180 : longitude)
                .name(printable(name));
        if (!description.isEmpty()) {
            point.desc(printable(description));
        }
        return point.build();
    }

    /** XML has no way to write most control characters. */
    private static String printable(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\r\n\t]]", " ");
    }

    private static String written(GPX gpx) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            GPX.Writer.DEFAULT.write(gpx, bytes);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }
}
