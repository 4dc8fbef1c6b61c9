package org.duskline.analyzer.replay;

import java.util.Arrays;

/**
 * A growing column of numbers, exact in as little room as they allow: whole thousandths, what a float holds, or doubles.
 * A column in which nothing was ever sent takes no room. NaN stands for what was not sent.
 */
final class PackedColumn {
    private static final int LEAST = 64;
    private static final double THOUSAND = 1000;
    private static final int NOT_SENT = Integer.MIN_VALUE;

    private int size;
    private int[] thousandths;
    private float[] floats;
    private double[] doubles;

    void add(double value) {
        if (thousandths == null && floats == null && doubles == null) {
            if (Double.isNaN(value)) {
                size++;
                return;
            }
            thousandths = new int[Math.max(LEAST, size + 1)];
            Arrays.fill(thousandths, 0, size, NOT_SENT);
        }
        if (thousandths != null && !holdsThousandths(value)) {
            widen(value);
        }
        if (floats != null && !holdsFloat(value)) {
            toDoubles();
        }
        put(value);
        size++;
    }

    private void put(double value) {
        if (thousandths != null) {
            thousandths = size < thousandths.length ? thousandths : Arrays.copyOf(thousandths, more());
            thousandths[size] = Double.isNaN(value) ? NOT_SENT : (int) Math.rint(value * THOUSAND);
        } else if (floats != null) {
            floats = size < floats.length ? floats : Arrays.copyOf(floats, more());
            floats[size] = (float) value;
        } else {
            doubles = size < doubles.length ? doubles : Arrays.copyOf(doubles, more());
            doubles[size] = value;
        }
    }

    private int more() {
        return size + size / 2 + LEAST;
    }

    private static boolean holdsThousandths(double value) {
        double whole = Math.rint(value * THOUSAND);
        return Double.isNaN(value) || Math.abs(whole) < Integer.MAX_VALUE && whole / THOUSAND == value;
    }

    private static boolean holdsFloat(double value) {
        return Double.isNaN(value) || (float) value == value;
    }

    private void widen(double value) {
        boolean narrow = holdsFloat(value);
        for (int i = 0; narrow && i < size; i++) {
            narrow = holdsFloat(get(i));
        }
        if (narrow) {
            float[] wider = new float[more()];
            for (int i = 0; i < size; i++) {
                wider[i] = (float) get(i);
            }
            floats = wider;
            thousandths = null;
        } else {
            toDoubles();
        }
    }

    private void toDoubles() {
        double[] wider = new double[more()];
        for (int i = 0; i < size; i++) {
            wider[i] = get(i);
        }
        doubles = wider;
        thousandths = null;
        floats = null;
    }

    double get(int index) {
        if (thousandths != null) {
            return thousandths[index] == NOT_SENT ? Double.NaN : thousandths[index] / THOUSAND;
        }
        if (floats != null) {
            return floats[index];
        }
        return doubles == null ? Double.NaN : doubles[index];
    }
}
