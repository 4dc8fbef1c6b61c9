package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.instruction.Instruction;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.Acknowledgement;
import org.duskline.web.page.board.NodeDetail;

/**
 * The page of one node.
 *
 * @param detail the node
 * @param trouble what was wrong with what was asked for; empty where nothing was
 * @param form what the form shows: what was asked for where it was wrong, otherwise what holds
 */
public record NodeView(NodeDetail detail, Optional<String> trouble, Form form) {
    /** The fields of the form as text, since what was typed may be no number. */
    public record Form(String period, String quickPeriod, String quick) {
        static Form of(NodeSettings settings) {
            return new Form(
                    String.valueOf(settings.periodSeconds()),
                    String.valueOf(settings.quickPeriodSeconds()),
                    settings.quick().wireName());
        }
    }

    /**
     * One setting.
     *
     * @param name what it is called
     * @param asked what was asked for last
     * @param inForce what the node says is in force
     */
    public record Row(String name, String asked, String inForce) {}

    static NodeView of(NodeDetail detail) {
        return new NodeView(detail, Optional.empty(), Form.of(detail.startingFrom()));
    }

    public ZoneId zone() {
        return detail.zone();
    }

    /** What was wrong with what was asked for; empty where nothing was. */
    public String complaint() {
        return trouble.map(words -> words + " Nothing was sent.").orElse("");
    }

    /** The event that tells an open page of news. */
    public String event() {
        return detail.fitting()
                .map(fitting -> "sse:trap-" + Links.address(fitting.trap()) + ", ")
                .orElse("");
    }

    /** How what was asked for stands, in one sentence or two. */
    public String standing() {
        Optional<Instruction> newest = detail.newest();
        if (newest.isEmpty()) {
            return detail.acknowledged().isPresent()
                    ? "Nothing was asked of it yet."
                    : "It has never said anything of its settings. The firmware of the hardware notes does at each"
                            + " connection; a board that knows readings alone never will.";
        }
        Instruction told = newest.get();
        return switch (told.state()) {
            case WAITS_FOR_BROKER ->
                "Revision " + told.revision() + " waits for the broker since " + moment(told.asked())
                        + ". It goes out by itself as soon as the broker answers.";
            case WAITS_FOR_NODE ->
                "Revision " + told.revision() + " waits for the node since " + moment(told.asked())
                        + ". A node that sleeps hears it when it next connects: after ten minutes in quiet hours, after"
                        + " forty with a low battery.";
            case REFUSED ->
                "The node refused revision " + told.revision() + " at "
                        + moment(told.settled().orElse(told.asked())) + " and found fault with “"
                        + told.refused().orElse("") + "”. What was in force before stays in force.";
            case IN_FORCE ->
                "Revision " + told.revision() + " is in force, acknowledged "
                        + moment(told.settled().orElse(told.asked())) + "." + tareStanding(told);
        };
    }

    private String tareStanding(Instruction told) {
        boolean waits =
                detail.acknowledged().filter(heard -> heard.hasYetToTare(told)).isPresent();
        return waits ? " The tare waits for a sample in which nothing shakes." : "";
    }

    public boolean refused() {
        return detail.newest()
                .filter(told -> told.state() == Instruction.State.REFUSED)
                .isPresent();
    }

    /** What was asked for beside what the node says. */
    public List<Row> settings() {
        Optional<NodeSettings> asked = detail.newest().map(Instruction::settings);
        Optional<Acknowledgement> said = detail.acknowledged().map(HeardAcknowledgement::said);
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(
                "Revision",
                detail.newest().map(told -> String.valueOf(told.revision())).orElse("–"),
                said.map(one -> String.valueOf(one.revision())).orElse("–")));
        rows.add(new Row(
                "Samples every",
                asked.map(one -> seconds(one.periodSeconds())).orElse("–"),
                said.map(one -> seconds(one.periodSeconds())).orElse("–")));
        rows.add(new Row(
                "When quick, every",
                asked.map(one -> seconds(one.quickPeriodSeconds())).orElse("–"),
                said.map(one -> seconds(one.quickPeriodSeconds())).orElse("–")));
        rows.add(new Row("Quick", asked.map(one -> Words.quick(one.quick())).orElse("–"), quickSaid(said)));
        rows.add(new Row(
                "Tare number",
                asked.map(one -> String.valueOf(one.tare())).orElse("–"),
                said.map(one -> number(one.tare())).orElse("–")));
        return rows;
    }

    private static String quickSaid(Optional<Acknowledgement> said) {
        return said.flatMap(Acknowledgement::quick).map(Words::quick).orElse("–")
                + said.flatMap(Acknowledgement::quickNow)
                        .map(now -> now ? ", quick now" : ", quiet now")
                        .orElse("");
    }

    private static String seconds(OptionalLong value) {
        return value.isPresent() ? seconds(value.getAsLong()) : "–";
    }

    private static String seconds(long value) {
        return value + " s";
    }

    static String number(OptionalLong value) {
        return value.isPresent() ? String.format(Locale.ENGLISH, "%,d", value.getAsLong()) : "–";
    }

    /** A stretch of time in the unit that tells most. */
    public static String stretch(Duration duration) {
        long seconds = Math.max(0, Math.round(duration.toMillis() / 1000.0));
        return seconds < 600 ? seconds + " s" : Words.length(duration);
    }

    /** What is known of the node's parts and of how it fares, each with its name. */
    public List<Row> facts() {
        List<Row> facts = new ArrayList<>();
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
                facts.add(fact("Zero of the scale", number(said.zeroCounts()) + " converter counts"));
            }
            if (said.waitingSamples().isPresent()) {
                facts.add(fact("Yet to be sent", number(said.waitingSamples()) + " samples"));
            }
            facts.add(fact("Its clock", clock()));
        });
        return facts;
    }

    private void pace(List<Row> facts, NodeDetail.Pace pace) {
        facts.add(fact(
                "Delay",
                stretch(pace.usualDelay()) + " from the sample to here, at most " + stretch(pace.longestDelay())
                        + " lately"));
        pace.between().ifPresent(between -> facts.add(fact("Sends every", stretch(between))));
    }

    private static void readings(List<Row> facts, NodeDetail.Readings readings) {
        readings.between().ifPresent(between -> facts.add(fact("Samples every", stretch(between))));
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
                from(last.from()));
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

    /** Since when a fitting or calibration holds. */
    public String from(Instant from) {
        return from.equals(Instant.MIN) ? "from the beginning" : "since " + Words.day(from, zone());
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
        return stretch(off.abs()) + (off.isNegative() ? " ahead" : " behind") + " when it last said";
    }

    private static Row fact(String name, String said) {
        return new Row(name, said, "");
    }

    /** "13:04" today, otherwise with the day. */
    public String moment(Instant time) {
        return Words.moment(time, detail.now(), zone());
    }

    /** One revision in a line of its history. */
    public String told(Instruction told) {
        NodeSettings settings = told.settings();
        return "every " + settings.periodSeconds() + " s, quick " + Words.quick(settings.quick()) + " every "
                + settings.quickPeriodSeconds() + " s, tare number " + settings.tare();
    }

    /** How a revision of the past ended. */
    public String ended(Instruction told) {
        boolean newest = told.revision() == detail.newest().orElseThrow().revision();
        return switch (told.state()) {
            case IN_FORCE -> newest ? "in force" : "was in force";
            case REFUSED -> "refused for “" + told.refused().orElse("") + "”";
            case WAITS_FOR_NODE -> newest ? "waits for the node" : "replaced before the node heard it";
            case WAITS_FOR_BROKER -> newest ? "waits for the broker" : "replaced before it was sent";
        };
    }
}
