package org.duskline.collector.wire;

import java.util.Arrays;

/** What one instant of a pack holds, its time still by the node's clock. Built up while the pack is read. */
final class RawSample {
    private final double seconds;
    private final double[] values = new double[Quantity.VALUES];
    private int sent;
    private int marks;
    private long boot = -1;
    private long seq = -1;

    RawSample(double seconds) {
        this.seconds = seconds;
        Arrays.fill(values, Double.NaN);
    }

    double seconds() {
        return seconds;
    }

    boolean isAbsolute() {
        return seconds >= SenmlRecord.FIRST_ABSOLUTE_SECOND;
    }

    /** Whether a quantity can be set without overwriting another value of it. */
    boolean takes(Quantity quantity, double value) {
        return (sent & bit(quantity)) == 0
                || quantity.place() >= Quantity.VALUES
                || Double.compare(values[quantity.place()], value) == 0;
    }

    void set(Quantity quantity, double value) {
        switch (quantity) {
            case BOOT -> boot = quantity.wholeNumber(value);
            case SEQ -> seq = quantity.wholeNumber(value);
            default -> {
                values[quantity.place()] = Double.isFinite(value) ? value : Double.NaN;
                marks |= quantity.markBit(value);
                sent |= bit(quantity);
            }
        }
    }

    private static int bit(Quantity quantity) {
        return 1 << quantity.place();
    }

    /** Whether it measures anything, instead of only numbering its pack. */
    boolean measures() {
        return sent != 0;
    }

    long boot() {
        return boot;
    }

    long seq() {
        return seq;
    }

    void number(long packBoot, long packSeq) {
        boot = packBoot;
        seq = packSeq;
    }

    double value(Quantity quantity) {
        return values[quantity.place()];
    }

    double value(int place) {
        return values[place];
    }

    Sample at(long timeMillis, long receivedMillis, int clockMarks) {
        return new Sample(
                timeMillis,
                receivedMillis,
                value(Quantity.IN),
                value(Quantity.OUT),
                value(Quantity.WEIGHT),
                value(Quantity.LOAD),
                value(Quantity.WEIGHT_SD),
                value(Quantity.CELL),
                value(Quantity.BOX),
                value(Quantity.HUMIDITY),
                value(Quantity.BATTERY),
                boot,
                seq,
                marks | clockMarks);
    }
}
