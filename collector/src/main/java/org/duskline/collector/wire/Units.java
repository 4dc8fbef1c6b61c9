package org.duskline.collector.wire;

/** Brings the units that the SenML registry has for a quantity (RFC 8428 section 12.1, RFC 8798) to ours. */
final class Units {
    private Units() {}

    /** The value in the quantity's own unit. No unit at all counts as the quantity's own. */
    static double toOwn(Quantity quantity, String unit, double value) throws UnreadableMessage {
        if (unit.isEmpty() || unit.equals(quantity.unit())) {
            return value;
        }
        switch (quantity.unit()) {
            case "kg" -> {
                if (unit.equals("g")) {
                    return value / 1000;
                }
            }
            case "Cel" -> {
                if (unit.equals("K")) {
                    return value - 273.15;
                }
            }
            case "V" -> {
                if (unit.equals("mV")) {
                    return value / 1000;
                }
            }
            case "%RH" -> {
                if (unit.equals("/")) {
                    return value * 100;
                }
                if (unit.equals("/100")) {
                    return value;
                }
            }
            default -> {}
        }
        throw new UnreadableMessage(
                DamageReason.UNIT,
                "The quantity " + quantity.text() + " is sent in \"" + unit + "\"; it takes \"" + quantity.unit()
                        + "\".");
    }
}
