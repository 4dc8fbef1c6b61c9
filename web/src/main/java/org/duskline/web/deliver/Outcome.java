package org.duskline.web.deliver;

/** What became of an attempt to send. */
public sealed interface Outcome {
    /** What the other side said, or what was done. */
    String words();

    record Delivered(String words) implements Outcome {}

    /** The words say what happened, where, and what to do. */
    record Failed(String words) implements Outcome {}
}
