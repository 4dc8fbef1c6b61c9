package org.duskline.analyzer.prove;

/**
 * How much is played.
 *
 * @param seasons of each level
 * @param traps on each line
 * @param days of each season
 * @param odds thresholds of the odds at which the trade-off is measured; empty for none
 */
public record ProofSize(int seasons, int traps, int days, double[] odds) {
    /** About a minute: enough to see a blunder, too little to see a promise kept. */
    public static ProofSize quick() {
        return new ProofSize(1, 8, 30, new double[0]);
    }

    /** Some hours of one processor: about four hundred arrivals, so that one in a hundred missed can be told. */
    public static ProofSize nightly() {
        return new ProofSize(12, 16, 80, new double[] {2, 5, 10, 20, 50, 100, 300});
    }
}
