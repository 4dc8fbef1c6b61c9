package org.duskline.collector.wire;

/** A message that cannot be decoded: the reason for counting, the message text for the person who looks into it. */
public final class UnreadableMessage extends Exception {
    private final DamageReason reason;

    UnreadableMessage(DamageReason reason, String detail) {
        // Thousands may come in a row from one broken board; nobody reads their stack traces.
        super(detail, null, false, false);
        this.reason = reason;
    }

    public DamageReason reason() {
        return reason;
    }
}
