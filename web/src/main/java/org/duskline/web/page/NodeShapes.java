package org.duskline.web.page;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.instruction.Instruction;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.KeptDamage;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.wire.Acknowledgement;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.web.page.board.NodeDetail;

/** The shape of the API's answer about a node. What nobody has said is left out. */
final class NodeShapes {
    private NodeShapes() {}

    static Map<String, Object> node(NodeDetail detail) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("node", detail.name());
        shape.put("now", detail.now().toString());
        detail.fitting().ifPresent(fitting -> shape.put("trap", fitting.trap()));
        shape.put(
                "fittings", detail.fittings().stream().map(NodeShapes::fitting).toList());
        detail.heard().ifPresent(heard -> heard(shape, heard));
        detail.pace().ifPresent(pace -> {
            shape.put("delaySeconds", pace.usualDelay().toMillis() / 1000.0);
            shape.put("longestDelaySeconds", pace.longestDelay().toMillis() / 1000.0);
            pace.between().ifPresent(between -> shape.put("sendsEverySeconds", between.toMillis() / 1000.0));
        });
        detail.readings().ifPresent(readings -> readings(shape, readings));
        detail.counter().ifPresent(block -> {
            shape.put("lanes", block.lanes());
            shape.put("deadTimeSeconds", block.deadTime().toMillis() / 1000.0);
        });
        shape.put(
                "calibrations",
                detail.calibrations().stream().map(NodeShapes::calibration).toList());
        detail.drift().ifPresent(drift -> shape.put("drift", drift(drift)));
        shape.put("unreadableMessages", detail.damages());
        shape.put(
                "lastUnreadable",
                detail.lastDamages().stream().map(NodeShapes::damage).toList());
        shape.put("told", detail.told().stream().map(NodeShapes::told).toList());
        detail.acknowledged().ifPresent(heard -> shape.put("acknowledged", acknowledged(heard)));
        return shape;
    }

    private static Map<String, Object> drift(ScaleDrift drift) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("kgPerCelsius", drift.kgPerCelsius());
        shape.put("lowKgPerCelsius", drift.interval().low());
        shape.put("highKgPerCelsius", drift.interval().high());
        shape.put("referenceCelsius", drift.referenceCelsius());
        shape.put("corrected", drift.sure());
        return shape;
    }

    private static void heard(Map<String, Object> shape, HeardNode heard) {
        shape.put("firstHeard", heard.firstHeard().toString());
        shape.put("lastHeard", heard.lastHeard().toString());
        heard.status().ifPresent(status -> shape.put("status", status.name().toLowerCase(Locale.ROOT)));
    }

    private static void readings(Map<String, Object> shape, NodeDetail.Readings readings) {
        shape.put("measured", readings.newest().toString());
        shape.put("measures", readings.quantities());
        readings.between().ifPresent(between -> shape.put("samplesEverySeconds", between.toMillis() / 1000.0));
        if (!Double.isNaN(readings.batteryVolts())) {
            shape.put("batteryVolts", readings.batteryVolts());
        }
        if (readings.boot() >= 0) {
            shape.put("boot", readings.boot());
            shape.put("startsInSevenDays", readings.starts());
        }
    }

    private static Map<String, Object> fitting(Fitting fitting) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("trap", fitting.trap());
        shape.put("fitted", fitting.fitted().name().toLowerCase(Locale.ROOT));
        end(shape, "from", fitting.from());
        end(shape, "until", fitting.until());
        return shape;
    }

    /** An open end is left out. */
    private static void end(Map<String, Object> shape, String name, Instant time) {
        if (!time.equals(Instant.MIN) && !time.equals(Instant.MAX)) {
            shape.put(name, time.toString());
        }
    }

    private static Map<String, Object> calibration(Calibration calibration) {
        Map<String, Object> shape = new LinkedHashMap<>();
        end(shape, "from", calibration.from());
        shape.put("offsetCounts", calibration.offsetCounts());
        shape.put("countsPerKg", calibration.countsPerKg());
        return shape;
    }

    private static Map<String, Object> damage(KeptDamage kept) {
        return Map.of(
                "received", kept.damage().message().received().toString(),
                "topic", kept.damage().message().topic(),
                "reason", kept.damage().reason().name(),
                "detail", kept.damage().detail());
    }

    private static Map<String, Object> told(Instruction told) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("revision", told.revision());
        shape.put("state", told.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        NodeSettings settings = told.settings();
        shape.put("periodSeconds", settings.periodSeconds());
        shape.put("quickPeriodSeconds", settings.quickPeriodSeconds());
        shape.put("quick", settings.quick().wireName());
        shape.put("tare", settings.tare());
        shape.put("asked", told.asked().toString());
        if (!told.by().isEmpty()) {
            shape.put("by", told.by());
        }
        time(shape, "sent", told.sent());
        time(shape, "settled", told.settled());
        told.refused().ifPresent(words -> shape.put("refused", words));
        return shape;
    }

    private static Map<String, Object> acknowledged(HeardAcknowledgement heard) {
        Acknowledgement said = heard.said();
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("received", heard.received().toString());
        shape.put("revision", said.revision());
        number(shape, "periodSeconds", said.periodSeconds());
        number(shape, "quickPeriodSeconds", said.quickPeriodSeconds());
        said.quick().map(QuickMode::wireName).ifPresent(quick -> shape.put("quick", quick));
        said.quickNow().ifPresent(now -> shape.put("quickNow", now));
        number(shape, "tare", said.tare());
        number(shape, "zeroCounts", said.zeroCounts());
        number(shape, "lanes", said.lanes());
        number(shape, "faultyLanes", said.faultyLanes());
        number(shape, "waitingSamples", said.waitingSamples());
        said.refused().ifPresent(words -> shape.put("refused", words));
        return shape;
    }

    private static void number(Map<String, Object> shape, String name, OptionalLong value) {
        value.ifPresent(number -> shape.put(name, number));
    }

    private static void time(Map<String, Object> shape, String name, Optional<Instant> time) {
        time.ifPresent(instant -> shape.put(name, instant.toString()));
    }
}
