package org.duskline.web.page;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.analyzer.stats.Interval;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.instruction.Instruction;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.KeptDamage;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.wire.Acknowledgement;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.collector.wire.Damage;
import org.duskline.collector.wire.DamageReason;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.Status;
import org.duskline.collector.wire.UnreadableMessage;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.NodeDetail;
import org.duskline.web.page.board.Nodes;

/** Three nodes of the invented line: one that knows settings, one that refused the last ones, one that knows none. */
final class InventedNodes implements Nodes {
    static final Instant NOW = InventedLine.NOW;

    private final List<NodeSettings> asked = new ArrayList<>();

    /** What was asked for over the pages, in order. */
    List<NodeSettings> asked() {
        return asked;
    }

    @Override
    public Optional<NodeDetail> node(String name) {
        return switch (name) {
            case "n10" -> Optional.of(knowing(name, Optional.empty()));
            case "n11" -> Optional.of(knowing(name, Optional.of("quick-period")));
            case "n31" -> Optional.of(plain());
            default -> Optional.empty();
        };
    }

    @Override
    public void ask(String node, NodeSettings settings, String by) {
        asked.add(settings);
    }

    @Override
    public void tellTime(String node, String by) {
        asked.add(NodeSettings.USUAL);
    }

    private static NodeDetail knowing(String name, Optional<String> refused) {
        Instant before = NOW.minus(Duration.ofDays(9));
        Instant asked = NOW.minus(Duration.ofMinutes(25));
        Instruction first = told(name, 6, NodeSettings.USUAL, before, "", Optional.empty());
        Instruction last = told(name, 7, new NodeSettings(180, 20, QuickMode.AUTO, 1), asked, "Ida", refused);
        return new NodeDetail(
                NOW,
                link(),
                name,
                InventedLine.ZONE,
                List.of(
                        new Fitting(
                                name,
                                name.equals("n10") ? "Alder Sluice" : "Chapel Nook",
                                Fitted.BOTH,
                                before,
                                Instant.MAX),
                        new Fitting(name, "Weir House", Fitted.BOTH, Instant.MIN, before)),
                Optional.of(new HeardNode(
                        name, before, NOW.minusSeconds(130), Optional.of(Status.ONLINE), Optional.of(before))),
                Optional.of(new NodeDetail.Pace(
                        Duration.ofSeconds(4), Duration.ofMinutes(134), Optional.of(Duration.ofMinutes(10)))),
                Optional.of(new NodeDetail.Readings(
                        NOW.minusSeconds(134),
                        Optional.of(Duration.ofSeconds(180)),
                        List.of("bees in and out", "weight", "box", "shade", "battery"),
                        3.92,
                        4,
                        1)),
                2,
                List.of(new KeptDamage(
                        1,
                        new Damage(
                                new Message(
                                        NOW.minus(Duration.ofHours(30)), "traps/" + name + "/readings", new byte[] {1}),
                                DamageReason.TORN,
                                "The pack ends in its middle, after 311 bytes."))),
                List.of(new Calibration(name, before, 81_234, 21_470)),
                Optional.of(new ScaleDrift(0.0018, new Interval(0.0015, 0.0021), 14.2, 311)),
                Optional.of(new LaneBlock(name, Instant.MIN, 8, LaneBlock.USUAL_DEAD_TIME)),
                List.of(last, first),
                Optional.of(new HeardAcknowledgement(name, NOW.minusSeconds(130), false, said(refused))));
    }

    private static Instruction told(
            String node, long revision, NodeSettings settings, Instant asked, String by, Optional<String> refused) {
        Optional<Instant> later = Optional.of(asked.plus(Duration.ofMinutes(9)));
        return new Instruction(node, revision, settings, asked, by, Optional.of(asked.plusSeconds(1)), later, refused);
    }

    private static Acknowledgement said(Optional<String> refused) {
        String pack = "[{\"n\":\"rev\",\"v\":" + (refused.isPresent() ? 6 : 7)
                + "},{\"n\":\"period\",\"v\":180},{\"n\":\"quick-period\",\"v\":20},{\"n\":\"quick\",\"vs\":\"auto\"},"
                + "{\"n\":\"quick-now\",\"vb\":false},{\"n\":\"tare\",\"v\":1},{\"n\":\"zero\",\"v\":81234},"
                + "{\"n\":\"lanes\",\"v\":8},{\"n\":\"lanes-faulty\",\"v\":1},{\"n\":\"stored\",\"v\":0},"
                + "{\"n\":\"clock\",\"v\":" + NOW.minusSeconds(130).getEpochSecond() + "}"
                + refused.map(words -> ",{\"n\":\"refused\",\"vs\":\"" + words + "\"}")
                        .orElse("") + "]";
        try {
            return Acknowledgement.decode(pack.getBytes(StandardCharsets.UTF_8));
        } catch (UnreadableMessage impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static NodeDetail plain() {
        return new NodeDetail(
                NOW,
                link(),
                "n31",
                InventedLine.ZONE,
                List.of(),
                Optional.of(new HeardNode(
                        "n31",
                        NOW.minus(Duration.ofHours(15)),
                        NOW.minusSeconds(180),
                        Optional.empty(),
                        Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                0,
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }

    private static BrokerLink link() {
        return new BrokerLink(true, NOW.minus(Duration.ofMinutes(400)), "mqtt://localhost:1883");
    }
}
