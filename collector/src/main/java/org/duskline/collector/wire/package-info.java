/**
 * What a node sends, decoded: messages, SenML packs (RFC 8428), samples, and damage that could not be decoded.
 * <p>May import {@code trap}. Never opens a connection, a file or a database.
 */
package org.duskline.collector.wire;
