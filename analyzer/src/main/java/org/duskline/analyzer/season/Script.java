package org.duskline.analyzer.season;

import java.util.List;

/**
 * What is written instead of drawn at one trap of the demo line. Times are Unix seconds.
 *
 * @param swarms arrivals, in order; no others come
 * @param losing scoutings that come to nothing, besides the drawn ones
 * @param robbings when robbers come
 * @param visits hands besides the drawn ones
 * @param sprinklers somebody's garden water on the box
 */
record Script(
        List<Arrival> swarms,
        List<Scouted> losing,
        List<Double> robbings,
        List<TrapTruth.Handling> visits,
        List<Sprinkler> sprinklers) {

    /**
     * A swarm to come.
     *
     * @param at first bees; moved to the next hour of flight weather unless exact
     * @param massKg its mass
     * @param minutes of entering
     * @param collected whether the keeper takes it the next evening
     * @param exact whether the moment is kept whatever the weather
     */
    record Arrival(double at, double massKg, double minutes, boolean collected, boolean exact) {}

    record Scouted(double from, double until) {}

    /** Water that a garden hose leaves on a box: kilograms within minutes in fine weather, dried within hours. */
    record Sprinkler(double start, double minutes, double kg) implements Load {
        private static final double DRYING_SECONDS = 5 * 3600;

        @Override
        public double kg(double t) {
            if (t < start) {
                return 0;
            }
            double end = start + minutes * 60;
            return t < end ? kg * (t - start) / (end - start) : kg * Math.exp(-(t - end) / DRYING_SECONDS);
        }
    }

    static Script nothing() {
        return new Script(List.of(), List.of(), List.of(), List.of(), List.of());
    }
}
