/**
 * The way in, one path for live and recorded messages: decode, store, commit, only then acknowledge.
 * <p>May import everything of the collector; the entry that other modules use.
 */
package org.duskline.collector.collect;
