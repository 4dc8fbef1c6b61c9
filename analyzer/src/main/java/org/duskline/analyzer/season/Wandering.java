package org.duskline.analyzer.season;

/** A first-order Gauss-Markov wandering with mean 0 and deviation 1, advanced in equal steps. */
final class Wandering {
    private final Dice dice;
    private final double memory;
    private double value;

    Wandering(Dice dice, double stepSeconds, double memorySeconds) {
        this.dice = dice;
        this.memory = Math.exp(-stepSeconds / memorySeconds);
        this.value = dice.gauss();
    }

    double next() {
        value = memory * value + Math.sqrt(1 - memory * memory) * dice.gauss();
        return value;
    }
}
