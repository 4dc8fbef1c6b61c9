/**
 * Where messages come from: a broker (embedded or external) or a recorded stream; and where alerts go to a broker.
 * <p>May import {@code wire}. The only package of the project that speaks MQTT. Knows nothing of storage.
 */
package org.duskline.collector.intake;
