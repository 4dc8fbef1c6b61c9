package org.duskline.collector.wire;

import java.time.Instant;

/**
 * One MQTT message as it came.
 *
 * @param received when it reached us; the only clock that intake knows
 * @param topic the full topic
 * @param payload the bytes, untouched; callers must not change them
 */
@SuppressWarnings("ArrayRecordComponent")
public record Message(Instant received, String topic, byte[] payload) {}
