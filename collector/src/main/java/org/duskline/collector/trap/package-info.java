/**
 * The keeper's own words for the line: traps, nodes and which node hung in which trap from when to when.
 * <p>A leaf: imports nothing of the project. No wire format, no storage.
 */
package org.duskline.collector.trap;
