package org.duskline.web.tuning;

import org.duskline.analyzer.replay.Suggestion;

/** Told what becomes of a wish. Called on the desk's thread; what it throws ends the work. */
public interface Listener {
    /**
     * @param done share of the work at hand, 0 to 1
     * @param doing what is being done
     */
    void at(double done, String doing);

    /** A first stretch, or the whole. */
    default void brought(Outcome outcome) {}

    default void suggested(Suggestion suggestion) {}

    /** It could not be done, in words. */
    default void failed(String words) {}

    /** Nothing more comes: it is done, failed or cancelled. */
    default void over() {}
}
