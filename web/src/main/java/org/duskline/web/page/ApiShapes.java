package org.duskline.web.page;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.duskline.analyzer.evening.AlreadyClosed;
import org.duskline.analyzer.evening.Caution;
import org.duskline.analyzer.evening.Doubtful;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.evening.Stop;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Doorstep;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.Look;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.Tonight;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.TrapNow;

/** The shapes of the API's answers. A number that was not measured is left out. Times are RFC 3339 in UTC. */
final class ApiShapes {
    private ApiShapes() {}

    static Map<String, Object> tonight(Tonight tonight) {
        EveningSheet sheet = tonight.sheet();
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("now", tonight.now().toString());
        shape.put("broker", link(tonight.link()));
        shape.put("evening", sheet.evening().toString());
        shape.put("zone", sheet.zone().getId());
        time(shape, "dusk", tonight.night().map(Night::dusk));
        time(shape, "dawn", tonight.night().map(Night::dawn));
        time(shape, "leave", sheet.round().leave());
        time(shape, "home", sheet.round().homeAt());
        shape.put("kmAsTheCrowFlies", sheet.round().km());
        shape.put("minutesInAll", sheet.round().total().toMinutes());
        shape.put("close", sheet.round().stops().stream().map(ApiShapes::stop).toList());
        shape.put("doubtful", sheet.doubtful().stream().map(ApiShapes::doubtful).toList());
        shape.put("closed", sheet.closed().stream().map(ApiShapes::closed).toList());
        shape.put("look", tonight.looks().stream().map(ApiShapes::look).toList());
        shape.put("bring", sheet.bring());
        shape.put("cautions", sheet.cautions().stream().map(Caution::said).toList());
        return shape;
    }

    static Map<String, Object> line(LineOverview line) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("now", line.now().toString());
        shape.put("broker", link(line.link()));
        shape.put("traps", line.traps().stream().map(ApiShapes::trapNow).toList());
        shape.put(
                "looseNodes",
                line.looseNodes().stream()
                        .map(loose -> Map.of(
                                "node",
                                loose.node(),
                                "firstHeard",
                                loose.firstHeard().toString(),
                                "lastHeard",
                                loose.lastHeard().toString()))
                        .toList());
        return shape;
    }

    static Map<String, Object> trap(TrapDetail detail) {
        Map<String, Object> shape = trapNow(detail.trap());
        shape.put("now", detail.now().toString());
        time(shape, "recordedFrom", detail.recordedFrom());
        shape.put("findings", detail.findings().stream().map(ApiShapes::finding).toList());
        shape.put("visits", detail.visits().stream().map(ApiShapes::visit).toList());
        shape.put("due", detail.due());
        return shape;
    }

    static Map<String, Object> finding(Finding finding) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("finding", FindingAddress.of(finding));
        shape.put("trap", finding.trap());
        shape.put("node", finding.node());
        shape.put("kind", finding.kind().wireName());
        shape.put("onset", finding.onset().toString());
        shape.put("raised", finding.raised().toString());
        shape.put("stage", finding.stage().wireName());
        shape.put("changed", finding.changed().toString());
        number(shape, "probability", finding.probability());
        shape.put("summary", finding.summary());
        shape.put(
                "evidence",
                finding.evidence().stream()
                        .map(piece -> Map.of("said", piece.said(), "logOdds", piece.logOdds()))
                        .toList());
        Map<String, Double> rivals = new TreeMap<>();
        finding.rivals().forEach((rival, probability) -> rivals.put(rival.wireName(), probability));
        shape.put("rivals", rivals);
        finding.size()
                .ifPresent(size -> shape.put(
                        "size",
                        Map.of(
                                "kg", size.kg(),
                                "lowKg", size.lowKg(),
                                "highKg", size.highKg(),
                                "bees", size.bees())));
        shape.put("thresholds", finding.thresholds());
        return shape;
    }

    private static Map<String, Object> trapNow(TrapNow trap) {
        Map<String, Object> shape = place(trap.trap());
        shape.put("fitted", trap.fitted().name().toLowerCase(java.util.Locale.ROOT));
        trap.node().ifPresent(node -> shape.put("node", node));
        shape.put("condition", trap.condition().wireName());
        time(shape, "lastHeard", trap.lastHeard());
        time(shape, "measured", trap.measured());
        number(shape, "weightKg", trap.weightKg());
        number(shape, "inPerMinute", trap.inPerMinute());
        number(shape, "outPerMinute", trap.outPerMinute());
        number(shape, "boxCelsius", trap.boxCelsius());
        number(shape, "cellCelsius", trap.cellCelsius());
        number(shape, "batteryVolts", trap.batteryVolts());
        trap.standing().ifPresent(finding -> shape.put("standing", finding(finding)));
        return shape;
    }

    private static Map<String, Object> stop(Stop stop) {
        Map<String, Object> shape = place(stop.trap());
        shape.put("number", stop.number());
        shape.put("finding", finding(stop.moveIn()));
        flightEnd(shape, stop.flightEnd());
        shape.put("arrive", stop.arrive().toString());
        shape.put("late", stop.late());
        number(shape, "legKm", stop.legKm());
        number(shape, "liftKg", stop.lift().kg());
        number(shape, "liftAtMostKg", stop.lift().atMostKg());
        shape.put("geo", stop.geo());
        return shape;
    }

    private static void flightEnd(Map<String, Object> shape, FlightEnd end) {
        shape.put("flightEnds", end.at().toString());
        shape.put("flightEndsBy", end.reason());
        shape.put("opens", end.window().opens().toString());
        shape.put("best", end.window().best().toString());
        shape.put("shuts", end.window().closes().toString());
    }

    private static Map<String, Object> doubtful(Doubtful doubtful) {
        Map<String, Object> shape = place(doubtful.trap());
        shape.put("finding", finding(doubtful.moveIn()));
        flightEnd(shape, doubtful.flightEnd());
        shape.put("settles", doubtful.settles());
        return shape;
    }

    private static Map<String, Object> closed(AlreadyClosed closed) {
        Map<String, Object> shape = place(closed.trap());
        shape.put("since", closed.since().toString());
        shape.put("by", closed.by());
        return shape;
    }

    /** What somebody sees who stands at a trap. */
    static Map<String, Object> doorstep(Doorstep doorstep) {
        Map<String, Object> shape = place(doorstep.trap().trap());
        shape.put("now", doorstep.now().toString());
        shape.put("headline", EntranceWords.headline(doorstep));
        shape.put("said", EntranceWords.said(doorstep));
        shape.put("closeNow", EntranceWords.closeNow(doorstep));
        flightEnd(shape, doorstep.flightEnd());
        time(shape, "measured", doorstep.trap().measured());
        number(shape, "boxCelsius", doorstep.trap().boxCelsius());
        number(shape, "cellCelsius", doorstep.trap().cellCelsius());
        time(shape, "closed", doorstep.closed().map(Visit::at));
        return shape;
    }

    private static Map<String, Object> look(Look look) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("trap", look.trap());
        shape.put("address", TrapAddress.of(look.trap()));
        shape.put("what", look.what());
        look.finding().ifPresent(finding -> shape.put("finding", finding(finding)));
        return shape;
    }

    /** One edition of a visit. */
    static Map<String, Object> visit(KeptVisit kept) {
        Visit visit = kept.visit();
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("number", kept.id());
        shape.put("edition", kept.edition());
        shape.put("trap", visit.trap());
        shape.put("at", visit.at().toString());
        shape.put("what", visit.kind().wireName());
        shape.put("by", visit.by());
        number(shape, "massKg", visit.massKg());
        visit.whereTo().ifPresent(place -> shape.put("whereTo", place));
        shape.put("note", visit.note());
        shape.put("written", kept.written().toString());
        shape.put("writtenBy", kept.writtenBy());
        shape.put("struck", kept.struck());
        return shape;
    }

    private static Map<String, Object> place(Trap trap) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("trap", trap.name());
        shape.put("address", TrapAddress.of(trap.name()));
        shape.put("coordinates", List.of(trap.longitude(), trap.latitude()));
        shape.put("zone", trap.zone().getId());
        return shape;
    }

    private static Map<String, Object> link(BrokerLink link) {
        return Map.of("up", link.up(), "since", link.since().toString(), "where", link.where());
    }

    private static void number(Map<String, Object> shape, String name, double value) {
        if (!Double.isNaN(value)) {
            shape.put(name, value);
        }
    }

    private static void time(Map<String, Object> shape, String name, Optional<Instant> time) {
        time.ifPresent(instant -> shape.put(name, instant.toString()));
    }
}
