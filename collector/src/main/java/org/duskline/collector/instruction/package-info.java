/**
 * What nodes are told and what they say to it: settings by revision, written down before they are sent, sent until a
 * broker has them, and settled by the node's acknowledgement.
 * <p>May import {@code wire}, {@code store} and {@code intake}. Speaks SQL for its own two tables; reads no sample.
 */
package org.duskline.collector.instruction;
