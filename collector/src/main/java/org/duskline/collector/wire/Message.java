package org.duskline.collector.wire;

import java.time.Instant;

/**
 * One MQTT message as it came.
 *
 * @param received when it reached us; the only clock that intake knows
 * @param topic the full topic
 * @param payload the bytes, untouched; callers must not change them
 * @param fromStore whether the broker had kept it and handed it over when we came (MQTT 3.1.1, section 3.3.1.3); a
 *     recorded stream does not tell
 */
@SuppressWarnings("ArrayRecordComponent")
public record Message(Instant received, String topic, byte[] payload, boolean fromStore) {
    /** A message passed on at the moment of its publishing. */
    public Message(Instant received, String topic, byte[] payload) {
        this(received, topic, payload, false);
    }
}
