package org.duskline.collector.store;

/**
 * What became of a pack's samples.
 *
 * @param added stored as new
 * @param merged added to what was known of the same instant
 * @param repeats known already
 * @param moved samples of earlier packs that were placed earlier in time, because this one showed what the node's wrong
 *     clock really meant
 */
public record Stored(int added, int merged, int repeats, int moved) {}
