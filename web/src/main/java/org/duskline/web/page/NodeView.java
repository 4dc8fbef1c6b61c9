package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.instruction.Instruction;
import org.duskline.collector.instruction.NodeSettings;
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
        return new NodeFacts(detail).rows();
    }

    /** Since when a fitting or calibration holds. */
    public String from(Instant from) {
        return from(from, zone());
    }

    static String from(Instant from, ZoneId zone) {
        return from.equals(Instant.MIN) ? "from the beginning" : "since " + Words.day(from, zone);
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
