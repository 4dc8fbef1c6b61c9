package org.duskline.analyzer.season;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;

/**
 * Writes the forms of CBOR (RFC 8949) that boards use, half floats and indefinite arrays among them, which the JSON
 * library's generator does not offer for choice.
 */
final class CborWriter {
    private final ByteArrayOutputStream to;

    CborWriter(ByteArrayOutputStream to) {
        this.to = to;
    }

    /** An array of a known size, or of indefinite length for -1. */
    void beginArray(int size) {
        if (size < 0) {
            to.write(0x9f);
        } else {
            head(4, size);
        }
    }

    void beginMap(int size) {
        head(5, size);
    }

    void end() {
        to.write(0xff);
    }

    CborWriter integer(long value) {
        if (value >= 0) {
            head(0, value);
        } else {
            head(1, -1 - value);
        }
        return this;
    }

    CborWriter text(String value) {
        byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
        head(3, bytes.length);
        to.writeBytes(bytes);
        return this;
    }

    void float64(double value) {
        to.write(0xfb);
        whole(Double.doubleToLongBits(value), 8);
    }

    void float32(float value) {
        to.write(0xfa);
        whole(Float.floatToIntBits(value), 4);
    }

    /** The half float where it is exact, else the single. */
    void shortest(float value) {
        int bits = Float.floatToIntBits(value);
        int exponent = ((bits >>> 23) & 0xff) - 127;
        boolean normal = exponent >= -14 && exponent <= 15;
        if (value == 0 || (normal && (bits & 0x1fff) == 0)) {
            int half = value == 0 ? 0 : ((bits >>> 16) & 0x8000) | ((exponent + 15) << 10) | ((bits >>> 13) & 0x3ff);
            to.write(0xf9);
            whole(half, 2);
        } else {
            float32(value);
        }
    }

    /** A decimal fraction: tag 4 with exponent and mantissa. */
    void decimal(BigDecimal value) {
        to.write(0xc4);
        head(4, 2);
        integer(-value.scale());
        integer(value.unscaledValue().longValueExact());
    }

    private void head(int type, long value) {
        int kind = type << 5;
        if (value < 24) {
            to.write(kind | (int) value);
        } else if (value < 0x100) {
            to.write(kind | 24);
            whole(value, 1);
        } else if (value < 0x10000) {
            to.write(kind | 25);
            whole(value, 2);
        } else if (value < 0x1_0000_0000L) {
            to.write(kind | 26);
            whole(value, 4);
        } else {
            to.write(kind | 27);
            whole(value, 8);
        }
    }

    private void whole(long bits, int bytes) {
        for (int i = bytes - 1; i >= 0; i--) {
            to.write((int) (bits >>> (8 * i)));
        }
    }

    byte[] bytes() {
        return to.toByteArray();
    }
}
