package org.duskline.analyzer.season;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Writes readings as a SenML pack (RFC 8428) in one node's own manner. */
final class Packer {
    private record Entry(String name, String unit, double value, int decimals, double at) {}

    private final Habit habit;

    Packer(Habit habit) {
        this.habit = habit;
    }

    /**
     * One payload.
     *
     * @param readings in order of time, by the node's own clock
     * @param sent the node's own clock when it sends
     * @param battery volts
     * @param boot starts so far
     * @param seq number of this pack
     */
    byte[] pack(List<Reading> readings, double sent, double battery, long boot, long seq) {
        List<Entry> entries = new ArrayList<>();
        for (Reading reading : readings) {
            measured(entries, reading);
        }
        double last = readings.get(readings.size() - 1).at();
        add(entries, habit.sendsBattery(), "battery", "V", battery, 3, last);
        add(entries, habit.sendsBoot(), "boot", "count", boot, 0, last);
        add(entries, habit.sendsSeq(), "seq", "count", seq, 0, last);
        return habit.format() == Habit.Format.JSON ? json(entries, sent) : cbor(entries, sent);
    }

    private void measured(List<Entry> entries, Reading r) {
        boolean counter = habit.fitted().hasCounter();
        boolean scale = habit.fitted().hasScale();
        boolean raw = !Double.isNaN(habit.countsPerKg());
        add(entries, counter, "in", "count", r.in(), 0, r.at());
        add(entries, counter, "out", "count", r.out(), 0, r.at());
        add(entries, scale && !raw, "weight", "kg", r.weightKg(), 3, r.at());
        add(entries, scale && raw, "load", "count", r.loadCounts(), 0, r.at());
        add(entries, habit.sendsDeviation(), "weight-sd", "kg", r.weightSdKg(), 3, r.at());
        add(entries, habit.sendsCell(), "cell", "Cel", r.cellCelsius(), 3, r.at());
        add(entries, habit.sendsBox(), "box", "Cel", r.boxCelsius(), 2, r.at());
        add(entries, habit.sendsHumidity(), "rh", "%RH", r.humidityPercent(), 1, r.at());
    }

    private static void add(
            List<Entry> entries, boolean sent, String name, String unit, double value, int decimals, double at) {
        if (sent && !Double.isNaN(value)) {
            entries.add(new Entry(name, unit, value, decimals, at));
        }
    }

    private double base(List<Entry> entries, double sent) {
        return switch (habit.times()) {
            case BASE_ABSOLUTE -> Math.round(entries.get(0).at());
            case BASE_RELATIVE -> Math.round(entries.get(0).at() - sent);
            default -> Double.NaN;
        };
    }

    private double time(Entry entry, double base, double sent) {
        return switch (habit.times()) {
            case BASE_ABSOLUTE -> Math.round(entry.at() - base);
            case BASE_RELATIVE -> Math.round(entry.at() - sent - base);
            case EACH_ABSOLUTE -> Math.round(entry.at());
            case EACH_RELATIVE -> Math.round(entry.at() - sent);
            case NONE -> 0;
        };
    }

    private byte[] json(List<Entry> entries, double sent) {
        double base = base(entries, sent);
        StringBuilder text = new StringBuilder(entries.size() * 44).append('[');
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            text.append(i == 0 ? "{" : ",{");
            if (i == 0 && !habit.baseName().isEmpty()) {
                text.append("\"bn\":\"").append(habit.baseName()).append("\",");
            }
            if (i == 0 && base != 0 && !Double.isNaN(base)) {
                text.append("\"bt\":").append((long) base).append(',');
            }
            long time = (long) time(entry, base, sent);
            if (time != 0) {
                text.append("\"t\":").append(time).append(',');
            }
            text.append("\"n\":\"").append(entry.name());
            text.append("\",\"u\":\"").append(entry.unit());
            text.append("\",\"v\":").append(decimal(entry)).append('}');
        }
        return text.append(']').toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String decimal(Entry entry) {
        return exact(entry).toPlainString();
    }

    private static BigDecimal exact(Entry entry) {
        long scaled = Math.round(entry.value() * Math.pow(10, entry.decimals()));
        BigDecimal value = BigDecimal.valueOf(scaled, entry.decimals()).stripTrailingZeros();
        return value.scale() < 0 ? value.setScale(0) : value;
    }

    private byte[] cbor(List<Entry> entries, double sent) {
        double base = base(entries, sent);
        CborWriter to = new CborWriter(new ByteArrayOutputStream(entries.size() * 32));
        to.beginArray(habit.indefiniteArrays() ? -1 : entries.size());
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            boolean named = i == 0 && !habit.baseName().isEmpty();
            boolean based = i == 0 && base != 0 && !Double.isNaN(base);
            long time = (long) time(entry, base, sent);
            to.beginMap(3 + (named ? 1 : 0) + (based ? 1 : 0) + (time != 0 ? 1 : 0));
            // Labels of RFC 8428, table 4: bn -2, bt -3, n 0, u 1, v 2, t 6.
            if (named) {
                to.integer(-2).text(habit.baseName());
            }
            if (based) {
                to.integer(-3).integer((long) base);
            }
            to.integer(0).text(entry.name()).integer(1).text(entry.unit()).integer(2);
            value(to, entry);
            if (time != 0) {
                to.integer(6).integer(time);
            }
        }
        if (habit.indefiniteArrays()) {
            to.end();
        }
        return to.bytes();
    }

    private void value(CborWriter to, Entry entry) {
        BigDecimal exact = exact(entry);
        if (entry.decimals() == 0) {
            to.integer(exact.longValueExact());
            return;
        }
        switch (habit.numbers()) {
            case DOUBLE -> to.float64(exact.doubleValue());
            case FLOAT -> to.float32(exact.floatValue());
            case SHORTEST -> to.shortest(exact.floatValue());
            case DECIMAL -> to.decimal(exact);
        }
    }
}
