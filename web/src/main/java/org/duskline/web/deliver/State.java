package org.duskline.web.deliver;

/** How far a message has come. */
public enum State {
    /** Not tried yet. */
    WAITING,
    /** Accepted by the other side. */
    SENT,
    /** Refused or unreachable; will be tried again. */
    FAILED,
    /** Not tried any more. */
    GIVEN_UP
}
