package org.duskline.web.app;

/** How the program ends. */
final class Exit {
    /** It did what it was asked. */
    static final int DONE = 0;
    /** It could not do it; standard error says why. */
    static final int FAILED = 1;
    /** It was asked wrongly: the command line or the settings have a mistake. */
    static final int ASKED_WRONGLY = 2;

    private Exit() {}
}
