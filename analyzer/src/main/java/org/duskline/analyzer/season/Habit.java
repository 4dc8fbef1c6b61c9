package org.duskline.analyzer.season;

import java.util.List;
import org.duskline.collector.trap.Fitted;

/**
 * How one node sends: what it measures, how often, and in which of the forms that the wire contract allows. All drawn;
 * the shares are invented.
 */
record Habit(
        String node,
        Fitted fitted,
        int periodSeconds,
        int samplesPerPack,
        Format format,
        Numbers numbers,
        Times times,
        String baseName,
        boolean indefiniteArrays,
        boolean sendsDeviation,
        boolean sendsCell,
        boolean sendsBox,
        boolean sendsHumidity,
        boolean sendsBattery,
        boolean sendsBoot,
        boolean sendsSeq,
        double countsPerKg,
        boolean keepsBacklog,
        boolean announcesStatus) {

    /** A pack that is filled for longer comes too late to be of use (invented). */
    private static final int LONGEST_PACK_SECONDS = 1500;

    enum Format {
        JSON,
        CBOR
    }

    /** How CBOR numbers are written: RFC 8949 floats of some width, or decimal fractions (tag 4). */
    enum Numbers {
        DOUBLE,
        FLOAT,
        SHORTEST,
        DECIMAL
    }

    /** How times are told (RFC 8428, section 4.5.3). */
    enum Times {
        BASE_ABSOLUTE(true),
        EACH_ABSOLUTE(true),
        BASE_RELATIVE(false),
        EACH_RELATIVE(false),
        NONE(false);

        private final boolean absolute;

        Times(boolean absolute) {
            this.absolute = absolute;
        }

        boolean absolute() {
            return absolute;
        }
    }

    static Habit draw(Dice dice, int number, Fitted fitted) {
        int pack = dice.pick(List.of(1, 1, 1, 2, 3, 4, 5, 6, 10));
        Times times = dice.pick(List.of(
                Times.BASE_ABSOLUTE,
                Times.BASE_ABSOLUTE,
                Times.EACH_ABSOLUTE,
                Times.BASE_RELATIVE,
                Times.EACH_RELATIVE,
                Times.NONE));
        int period = dice.pick(List.of(60, 60, 60, 90, 120, 120, 180, 240, 300, 300, 600));
        pack = times == Times.NONE ? 1 : Math.max(1, Math.min(pack, LONGEST_PACK_SECONDS / period));
        String node = dice.pick(
                List.of("b" + (100 + number), "box-" + number, "wren_" + Integer.toHexString(4096 + number * 37)));
        String name = dice.pick(List.of(
                "", "", node + "/", node + ":", "urn:dev:mac:%012x:".formatted(0x02d5_4e00_0000L + number * 257L)));
        boolean raw = fitted.hasScale() && dice.chance(0.06);
        return new Habit(
                node,
                fitted,
                period,
                pack,
                dice.chance(0.55) ? Format.JSON : Format.CBOR,
                dice.pick(List.of(Numbers.values())),
                times,
                name,
                dice.chance(0.3),
                fitted.hasScale() && dice.chance(0.5),
                fitted.hasScale() && dice.chance(0.65),
                dice.chance(0.55),
                dice.chance(0.35),
                dice.chance(0.8),
                dice.chance(0.55),
                dice.chance(0.55),
                raw ? dice.uniform(15_000, 110_000) : Double.NaN,
                times != Times.NONE && dice.chance(0.75),
                dice.chance(0.8));
    }

    /**
     * The same at a given pace, in kilograms, with time stamps that a backlog keeps, and that a hiccup of the machine,
     * which is minutes where the clock runs fast, does not shift.
     */
    Habit every(int seconds, int samples) {
        Times kept = times.absolute() ? times : Times.BASE_ABSOLUTE;
        return new Habit(
                node,
                fitted,
                seconds,
                samples,
                format,
                numbers,
                kept,
                baseName,
                indefiniteArrays,
                sendsDeviation,
                sendsCell,
                sendsBox,
                sendsHumidity,
                sendsBattery,
                sendsBoot,
                sendsSeq,
                Double.NaN,
                true,
                announcesStatus);
    }
}
