package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;

/**
 * The findings of one trap, so that folding the same past again tells nothing twice. A signal belongs to the finding of
 * its kind with about the same onset; the onset may shift a little when late samples fill a hole.
 */
final class Ledger {
    private static final long SAME_ONSET_MILLIS = 3 * 3_600_000L;

    /** A box that cooled down and climbs again must be told again. */
    private static final long SAME_HEAT_MILLIS = 20 * 60_000L;

    /** Robbers of one day are the same, seen at once or on the next morning. */
    private static final long SAME_ROBBERS_MILLIS = 12 * 3_600_000L;

    private static final String TAKEN_BACK = "Late readings show that it was something else";
    private static final int REMEMBERED = 200;

    private final String trap;
    private final List<Finding> findings = new ArrayList<>();

    Ledger(String trap, List<Finding> known) {
        this.trap = trap;
        findings.addAll(known);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    /** The findings that still stand. */
    List<Finding> standing() {
        return findings.stream().filter(Finding::standing).toList();
    }

    /**
     * Enters what a fold said.
     *
     * @param received receipt of the message that settled it
     * @return the finding as it now stands, where the signal changed anything
     */
    Optional<Finding> enter(Signal signal, String node, Instant received, int thresholds) {
        int known = indexOf(signal);
        if (signal.stage() == Stage.RAISED) {
            if (known >= 0) {
                return restored(known, signal, received);
            }
            Finding raised = raised(signal, node, received, thresholds);
            findings.add(raised);
            if (findings.size() > REMEMBERED) {
                findings.remove(0);
            }
            return Optional.of(raised);
        }
        if (known < 0 || !advances(findings.get(known).stage(), signal.stage())) {
            return Optional.empty();
        }
        Finding changed = changed(findings.get(known), signal, received);
        findings.set(known, changed);
        return Optional.of(changed);
    }

    /**
     * Withdraws what an earlier fold said of the refolded stretch and the new one does not bear out.
     *
     * @param fromMillis start of the stretch that was folded again
     * @param heldMillis by kind, the onset of what went on at that start: a swarm that lived in the trap, robbers; 0 where
     *     there was none
     * @param raised what the new fold said
     */
    List<Finding> withdrawUnrepeated(
            long fromMillis, long untilMillis, Map<Kind, Long> heldMillis, List<Signal> raised, Instant received) {
        List<Finding> withdrawn = new ArrayList<>();
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            Long held = heldMillis.get(finding.kind());
            boolean inside = held != null
                    && finding.standing()
                    && finding.onset().toEpochMilli() < untilMillis
                    && saidSince(finding, fromMillis, held);
            if (inside && raised.stream().noneMatch(signal -> same(finding, signal))) {
                Finding changed = withdrawn(finding, received);
                findings.set(i, changed);
                withdrawn.add(changed);
            }
        }
        return withdrawn;
    }

    private static boolean saidSince(Finding finding, long fromMillis, long heldMillis) {
        long onset = finding.onset().toEpochMilli();
        boolean came = onset > fromMillis + SAME_ONSET_MILLIS / 3;
        boolean told = Math.abs(onset - heldMillis) > apartMillis(finding.kind())
                && finding.raised().toEpochMilli() > fromMillis;
        return came || told;
    }

    private static boolean same(Finding finding, Signal signal) {
        return finding.kind() == signal.kind()
                && Math.abs(finding.onset().toEpochMilli() - signal.onsetMillis()) <= apartMillis(signal.kind());
    }

    private static long apartMillis(Kind kind) {
        return switch (kind) {
            case OVERHEATING -> SAME_HEAT_MILLIS;
            case ROBBING -> SAME_ROBBERS_MILLIS;
            default -> SAME_ONSET_MILLIS;
        };
    }

    private int indexOf(Signal signal) {
        for (int i = findings.size() - 1; i >= 0; i--) {
            Finding finding = findings.get(i);
            if (same(finding, signal)) {
                return i;
            }
        }
        return -1;
    }

    /** What late readings had taken back and still later ones bear out stands again, as the same finding. */
    private Optional<Finding> restored(int known, Signal signal, Instant received) {
        Finding before = findings.get(known);
        if (before.stage() != Stage.WITHDRAWN || !before.summary().equals(TAKEN_BACK)) {
            return Optional.empty();
        }
        Finding restored = changed(before, signal, received);
        findings.set(known, restored);
        return Optional.of(restored);
    }

    private static boolean advances(Stage from, Stage to) {
        return to.ordinal() > from.ordinal() && from != Stage.ENDED;
    }

    private Finding raised(Signal signal, String node, Instant received, int thresholds) {
        return new Finding(
                trap,
                node,
                signal.kind(),
                Instant.ofEpochMilli(signal.onsetMillis()),
                received,
                Stage.RAISED,
                received,
                signal.probability(),
                signal.summary(),
                signal.evidence(),
                signal.rivals(),
                signal.size(),
                thresholds);
    }

    private static Finding changed(Finding before, Signal signal, Instant received) {
        return new Finding(
                before.trap(),
                before.node(),
                before.kind(),
                before.onset(),
                before.raised(),
                signal.stage(),
                received,
                signal.stage() == Stage.ENDED ? before.probability() : signal.probability(),
                signal.summary(),
                before.evidence(),
                before.rivals(),
                signal.size().or(before::size),
                before.thresholds());
    }

    private static Finding withdrawn(Finding before, Instant received) {
        return new Finding(
                before.trap(),
                before.node(),
                before.kind(),
                before.onset(),
                before.raised(),
                Stage.WITHDRAWN,
                received,
                0.05,
                TAKEN_BACK,
                before.evidence(),
                before.rivals(),
                before.size(),
                before.thresholds());
    }
}
