package org.duskline.analyzer.prove;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What a proof measured; printed as a table or drawn as pictures. */
public final class ProofResult {
    private final ProofSize size;
    private final long firstSeed;
    private final Figures figures;
    private final Map<Double, Figures> byOdds = new TreeMap<>();

    ProofResult(ProofSize size, long firstSeed, List<JudgedTrap> judged, Map<Double, List<JudgedTrap>> byOdds) {
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
        return head + new ProofTable(figures).text();
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
}
