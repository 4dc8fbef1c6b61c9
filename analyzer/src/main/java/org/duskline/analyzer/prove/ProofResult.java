package org.duskline.analyzer.prove;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a proof measured; printed as a table or drawn as pictures. */
public final class ProofResult {
    private static final String TEXT = "mistakes.md";

    private final ProofSize size;
    private final long firstSeed;
    private final Figures figures;
    private final Map<Double, Figures> byOdds = new TreeMap<>();
    private final List<Outcome> foretold;
    private final List<DrawnMistake> mistakes;
    private final Optional<Ablation> ablation;

    ProofResult(
            ProofSize size,
            long firstSeed,
            List<JudgedTrap> judged,
            Map<Double, List<JudgedTrap>> byOdds,
            List<Outcome> foretold,
            List<DrawnMistake> mistakes,
            Optional<Ablation> ablation) {
        this.foretold = List.copyOf(foretold);
        this.mistakes = List.copyOf(mistakes);
        this.ablation = ablation;
        this.size = size;
        this.firstSeed = firstSeed;
        this.figures = new Figures(judged);
        byOdds.forEach((odds, traps) -> this.byOdds.put(odds, new Figures(traps)));
    }

    Figures figures() {
        return figures;
    }

    Map<Double, Figures> byOdds() {
        return byOdds;
    }

    /** The table of promises against figures. */
    public String table() {
        String head = "Synthetic seasons from seed " + firstSeed + ": " + size.seasons() + " a level, " + size.traps()
                + " traps, " + size.days() + " days each.\n";
        String forecasts = foretold.isEmpty() ? "" : new ForecastTable(foretold).text();
        return head
                + new ProofTable(figures).text()
                + forecasts
                + ablation.map(each -> "\nWhat each kind of evidence buys\n" + each.table())
                        .orElse("");
    }

    /** What was foretold of scouted traps against what came, as SVG; empty if nothing was. */
    public String forecastSvg() {
        return foretold.isEmpty() ? "" : ProofPictures.forecasts(new ForecastTable(foretold).withinADay());
    }

    /** Misses against false alarms as the odds threshold moves, as SVG; empty if no odds were swept. */
    public String tradeOffSvg() {
        return byOdds.isEmpty() ? "" : ProofPictures.tradeOff(byOdds);
    }

    /** The distribution of delays by fitting, as SVG. */
    public String delaySvg() {
        return ProofPictures.delays(figures);
    }

    /** What move-ins said of themselves against how often they were right, as SVG. */
    public String reliabilitySvg() {
        return ProofPictures.reliability(figures);
    }

    /**
     * The ten worst mistakes, at most three alike: a text in Markdown and its pictures.
     *
     * @return file names and what is in them, the text first
     */
    public Map<String, String> worstMistakes() {
        Map<Mistake, DrawnMistake> drawn = new LinkedHashMap<>();
        mistakes.forEach(each -> drawn.put(each.mistake(), each));
        Map<String, String> files = new LinkedHashMap<>();
        StringBuilder text = new StringBuilder();
        files.put(TEXT, "");
        for (Mistake mistake : Mistake.worst(List.copyOf(drawn.keySet()), 10, 3)) {
            String picture = "mistake-" + files.size() + ".svg";
            text.append(drawn.get(mistake).markdown(files.size(), picture)).append('\n');
            files.put(picture, drawn.get(mistake).svg());
        }
        files.put(TEXT, text.toString());
        return files;
    }
}
