package org.duskline.collector.store;

import org.duskline.collector.wire.Sample;

/** Compares and joins what two messages say of the same instant. */
final class SampleMerge {
    private SampleMerge() {}

    /** Whether everything the newer one says is known. */
    static boolean addsNothing(Sample known, Sample newer) {
        double[] before = values(known);
        double[] after = values(newer);
        for (int i = 0; i < before.length; i++) {
            if (!Double.isNaN(after[i]) && before[i] != after[i]) {
                return false;
            }
        }
        return true;
    }

    /** Whether the two contradict each other nowhere. */
    static boolean agrees(Sample known, Sample newer) {
        double[] before = values(known);
        double[] after = values(newer);
        for (int i = 0; i < before.length; i++) {
            if (!Double.isNaN(before[i]) && !Double.isNaN(after[i]) && before[i] != after[i]) {
                return false;
            }
        }
        return true;
    }

    /** The two together; receipt, boot and seq of the one that was known first. */
    static Sample merged(Sample known, Sample newer) {
        return new Sample(
                known.timeMillis(),
                known.receivedMillis(),
                either(known.in(), newer.in()),
                either(known.out(), newer.out()),
                either(known.weightKg(), newer.weightKg()),
                either(known.loadCount(), newer.loadCount()),
                either(known.weightSdKg(), newer.weightSdKg()),
                either(known.cellCelsius(), newer.cellCelsius()),
                either(known.boxCelsius(), newer.boxCelsius()),
                either(known.humidityPercent(), newer.humidityPercent()),
                either(known.batteryVolts(), newer.batteryVolts()),
                known.boot(),
                known.seq(),
                known.marks() | newer.marks());
    }

    static Sample at(Sample sample, long timeMillis) {
        return changed(sample, timeMillis, sample.weightKg());
    }

    static Sample weighing(Sample sample, double weightKg) {
        return changed(sample, sample.timeMillis(), weightKg);
    }

    private static Sample changed(Sample sample, long timeMillis, double weightKg) {
        return new Sample(
                timeMillis,
                sample.receivedMillis(),
                sample.in(),
                sample.out(),
                weightKg,
                sample.loadCount(),
                sample.weightSdKg(),
                sample.cellCelsius(),
                sample.boxCelsius(),
                sample.humidityPercent(),
                sample.batteryVolts(),
                sample.boot(),
                sample.seq(),
                sample.marks());
    }

    private static double either(double known, double newer) {
        return Double.isNaN(known) ? newer : known;
    }

    private static double[] values(Sample sample) {
        return new double[] {
            sample.in(),
            sample.out(),
            sample.weightKg(),
            sample.loadCount(),
            sample.weightSdKg(),
            sample.cellCelsius(),
            sample.boxCelsius(),
            sample.humidityPercent(),
            sample.batteryVolts()
        };
    }
}
