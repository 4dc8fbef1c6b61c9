/**
 * The synthetic season: a whole line of traps over many days with its weather, bees, animals, hands and faults, seeded
 * and with known truth, given out as the messages that its nodes would have sent.
 * <p>Each class is one cause. Every number names its source: {@code R..} and the letters {@code P}, {@code M}, {@code D}
 * are the entries of docs/trade.md (practice, memory, arithmetic); "invented" marks what has none. May import the
 * collector's values. Never a detector: the truth must not know who looks for it.
 */
package org.duskline.analyzer.season;
