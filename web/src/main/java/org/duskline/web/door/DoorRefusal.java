package org.duskline.web.door;

/** Somebody cannot come in this way; the message says why and what to do, in words for them. */
public final class DoorRefusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    DoorRefusal(String words) {
        super(words);
    }
}
