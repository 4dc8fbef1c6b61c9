package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.season.TrapTruth;

/** The same seasons watched without one kind of evidence at a time: what each buys. */
public final class Ablation {
    private static final String WHOLE = "everything";
    private static final String VISITS = "and recorded visits";

    private final Map<String, Tally> rows = new LinkedHashMap<>();

    private static final class Tally {
        private final List<JudgedTrap> judged = new ArrayList<>();
        private int right;
        private int rightBorneOut;
        private int rightTakenBack;
        private int wrong;
        private int wrongTakenBack;

        void add(PlayedSeason season, Watching watching) {
            judged.addAll(season.judge(watching.first()));
            for (TrapTruth trap : season.truth().traps()) {
                watching.first().stream()
                        .filter(finding ->
                                finding.kind() == Kind.MOVE_IN && finding.trap().equals(trap.trap()))
                        .forEach(finding -> add(finding, Judge.arrivalOf(trap, finding) >= 0, watching));
            }
        }

        int sum(ToIntFunction<JudgedTrap> count) {
            return judged.stream().mapToInt(count).sum();
        }

        private void add(Finding finding, boolean swarm, Watching watching) {
            boolean back = watching.takenBack(finding);
            right += swarm ? 1 : 0;
            rightBorneOut += swarm && watching.borneOut(finding) ? 1 : 0;
            rightTakenBack += swarm && back ? 1 : 0;
            wrong += swarm ? 0 : 1;
            wrongTakenBack += !swarm && back ? 1 : 0;
        }
    }

    void add(PlayedSeason season, Thresholds thresholds) {
        row(WHOLE).add(season, season.watch(thresholds, Set.of(), false, share -> {}));
        for (Beyond kind : Beyond.values()) {
            row("without " + kind.words()).add(season, season.watch(thresholds, Set.of(kind), false, share -> {}));
        }
        row(VISITS).add(season, season.watch(thresholds, Set.of(), true, share -> {}));
    }

    private Tally row(String name) {
        return rows.computeIfAbsent(name, key -> new Tally());
    }

    /** One row for each way of watching. */
    public String table() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%-34s %10s %12s %10s %12s %12s %12s %10s %10s%n",
                "",
                "caught",
                "false moveins",
                "delay min",
                "borne out",
                "taken back",
                "taken back",
                "robbings",
                "robbings"));
        text.append(String.format(
                Locale.ROOT,
                "%-34s %10s %12s %10s %12s %12s %12s %10s %10s%n",
                "",
                "",
                "",
                "median",
                "of right",
                "of right",
                "of false",
                "found",
                "false"));
        rows.forEach((name, tally) -> text.append(line(name, tally)));
        return text.toString();
    }

    private static String line(String name, Tally tally) {
        Figures figures = new Figures(tally.judged);
        return String.format(
                Locale.ROOT,
                "%-34s %10s %12d %10.1f %12s %12s %12s %10s %10d%n",
                name,
                figures.caught() == null
                        ? "-"
                        : figures.caught().successes() + "/" + figures.caught().trials(),
                tally.wrong,
                Figures.quantile(figures.delays(), 0.5),
                tally.rightBorneOut + "/" + tally.right,
                tally.rightTakenBack + "/" + tally.right,
                tally.wrongTakenBack + "/" + tally.wrong,
                tally.sum(JudgedTrap::robbingsFound) + "/" + tally.sum(JudgedTrap::robbings),
                tally.sum(JudgedTrap::robbingsFalse));
    }
}
