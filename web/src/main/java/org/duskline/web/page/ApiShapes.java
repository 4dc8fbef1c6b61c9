package org.duskline.web.page;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Closing;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.Look;
import org.duskline.web.page.board.Tonight;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.TrapNow;

/** The shapes of the API's answers. A number that was not measured is left out. Times are RFC 3339 in UTC. */
final class ApiShapes {
    private ApiShapes() {}

    static Map<String, Object> tonight(Tonight tonight) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("now", tonight.now().toString());
        shape.put("broker", link(tonight.link()));
        shape.put("evening", tonight.evening().toString());
        shape.put("zone", tonight.zone().getId());
        shape.put("dusk", tonight.night().dusk().toString());
        shape.put("dawn", tonight.night().dawn().toString());
        shape.put("close", tonight.closings().stream().map(ApiShapes::closing).toList());
        shape.put("look", tonight.looks().stream().map(ApiShapes::look).toList());
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
                                "lastHeard",
                                loose.lastHeard().toString(),
                                "samples",
                                loose.samples()))
                        .toList());
        return shape;
    }

    static Map<String, Object> trap(TrapDetail detail) {
        Map<String, Object> shape = trapNow(detail.trap());
        shape.put("now", detail.now().toString());
        time(shape, "recordedFrom", detail.recordedFrom());
        shape.put("findings", detail.findings().stream().map(ApiShapes::finding).toList());
        shape.put(
                "visits",
                detail.visits().stream()
                        .map(visit -> Map.of("at", visit.at().toString(), "what", visit.what(), "note", visit.note()))
                        .toList());
        return shape;
    }

    static Map<String, Object> finding(Finding finding) {
        Map<String, Object> shape = new LinkedHashMap<>();
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

    private static Map<String, Object> closing(Closing closing) {
        Map<String, Object> shape = place(closing.trap());
        shape.put("finding", finding(closing.finding()));
        shape.put("flightEnds", closing.flightEnds().toString());
        shape.put("flightEndsBy", closing.flightEndsBy());
        shape.put("opens", closing.opens().toString());
        shape.put("shuts", closing.shuts().toString());
        shape.put("closed", closing.closed());
        number(shape, "liftKg", closing.liftKg());
        return shape;
    }

    private static Map<String, Object> look(Look look) {
        Map<String, Object> shape = place(look.trap());
        shape.put("what", look.what());
        shape.put("settles", look.settles());
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
