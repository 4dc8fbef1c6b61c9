package org.duskline.web.deliver;

/** Why a change of a finding was told to a person, or not. */
public enum Decision {
    /** A new happening. */
    OPENED,
    /** A later step, told to whoever got the first. */
    CONTINUED,
    /** The first step had not gone out yet and was brought up to date instead. */
    FOLDED_IN,
    /** The person does not want this kind through this channel. */
    NOT_WANTED,
    /** The person never heard the first step. */
    NOT_CONCERNED,
    /** The last step said the same. */
    SAME_AGAIN,
    /** This change of this kind changes nothing for a keeper. */
    NOT_WORTH_TELLING,
    /** It comes and goes. */
    FLAPPING,
    /** It was withdrawn before anybody had been told. */
    TAKEN_BACK
}
