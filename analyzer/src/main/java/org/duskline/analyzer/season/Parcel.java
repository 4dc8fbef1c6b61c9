package org.duskline.analyzer.season;

/**
 * One message on its way to us.
 *
 * @param received when it reaches us, Unix seconds
 * @param topic below the root: node and channel
 * @param payload bytes
 * @param samples true times of the samples in it; empty when it cannot be read
 */
@SuppressWarnings("ArrayRecordComponent")
record Parcel(double received, String topic, byte[] payload, double[] samples) {
    static final double[] NONE = {};
}
