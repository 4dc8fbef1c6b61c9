package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.trap.Calibration;
import org.duskline.web.page.board.NodeDetail;

/**
 * What is known of a node's parts and of how it fares, in words.
 *
 * @param detail the node
 */
record NodeFacts(NodeDetail detail) {
    /** Each with its name; what is not known is left out. */
    List<NodeView.Row> rows() {
        List<NodeView.Row> facts = new ArrayList<>();
        detail.readings().ifPresent(readings -> facts.add(fact("Measures", String.join(", ", readings.quantities()))));
        detail.pace().ifPresent(pace -> pace(facts, pace));
        detail.readings().ifPresent(readings -> readings(facts, readings));
        detail.counter()
                .ifPresent(block -> facts.add(fact(
                        "Counter",
                        Words.count(block.lanes(), "lane", "lanes") + ", each blind for "
                                + block.deadTime().toMillis() + " ms after a bee"
                                + faulty())));
        facts.add(fact("Calibration", calibration()));
        detail.drift().ifPresent(drift -> facts.add(fact("With temperature", drift(drift))));
        detail.acknowledged().map(HeardAcknowledgement::said).ifPresent(said -> {
            if (said.zeroCounts().isPresent()) {
                facts.add(fact("Zero of the scale", NodeView.number(said.zeroCounts()) + " converter counts"));
            }
            if (said.waitingSamples().isPresent()) {
                facts.add(fact("Yet to be sent", NodeView.number(said.waitingSamples()) + " samples"));
            }
            facts.add(fact("Its clock", clock()));
        });
        return facts;
    }

    private void pace(List<NodeView.Row> facts, NodeDetail.Pace pace) {
        facts.add(fact(
                "Delay",
                NodeView.stretch(pace.usualDelay()) + " from the sample to here, at most "
                        + NodeView.stretch(pace.longestDelay()) + " lately"));
        pace.between().ifPresent(between -> facts.add(fact("Sends every", NodeView.stretch(between))));
    }

    private static void readings(List<NodeView.Row> facts, NodeDetail.Readings readings) {
        readings.between().ifPresent(between -> facts.add(fact("Samples every", NodeView.stretch(between))));
        if (!Double.isNaN(readings.batteryVolts())) {
            facts.add(fact("Battery", Words.volts(readings.batteryVolts()) + " V"));
        }
        if (readings.boot() >= 0) {
            facts.add(fact(
                    "Started",
                    readings.boot() + (readings.boot() == 1 ? " time" : " times") + " in all, " + readings.starts()
                            + " in the last seven days"));
        }
    }

    private String faulty() {
        OptionalLong faulty =
                detail.acknowledged().map(heard -> heard.said().faultyLanes()).orElse(OptionalLong.empty());
        if (faulty.isEmpty() || faulty.getAsLong() == 0) {
            return "";
        }
        return "; " + Words.count(faulty.getAsLong(), "lane is", "lanes are").toLowerCase(Locale.ENGLISH)
                + " blocked, dirty or dazzled";
    }

    private String calibration() {
        if (detail.calibrations().isEmpty()) {
            return "on the node; none is kept here";
        }
        Calibration last = detail.calibrations().get(0);
        return String.format(
                Locale.ENGLISH,
                "%,.0f counts a kilogram from %,.0f, %s",
                last.countsPerKg(),
                last.offsetCounts(),
                NodeView.from(last.from(), detail.zone()));
    }

    private static String drift(ScaleDrift drift) {
        double grams = 1000 * drift.kgPerCelsius();
        double low = 1000 * drift.interval().low();
        double high = 1000 * drift.interval().high();
        String learned = String.format(
                Locale.ENGLISH,
                "the scale shows %+.1f g for each degree warmer (95 %%: %+.1f to %+.1f), from %d hours",
                grams,
                low,
                high,
                drift.hours());
        return learned.replace('-', '−')
                + (drift.sure()
                        ? "; the trap's curve shows the weight without it, beside the raw"
                        : "; that may be nothing, so the curve is left as it is");
    }

    private String clock() {
        HeardAcknowledgement heard = detail.acknowledged().orElseThrow();
        OptionalLong clock = heard.said().clockSeconds();
        if (clock.isEmpty()) {
            return "it has none, or was not told the time yet";
        }
        Duration off = Duration.between(Instant.ofEpochSecond(clock.getAsLong()), heard.received());
        if (off.abs().compareTo(Duration.ofSeconds(5)) <= 0 || heard.fromStore()) {
            return "right, as far as can be told";
        }
        return NodeView.stretch(off.abs()) + (off.isNegative() ? " ahead" : " behind") + " when it last said";
    }

    private static NodeView.Row fact(String name, String said) {
        return new NodeView.Row(name, said, "");
    }
}
