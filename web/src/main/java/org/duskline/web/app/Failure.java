package org.duskline.web.app;

/** A command could not do what it was asked; the words say what happened, where, and what to do next. */
final class Failure extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int exit;

    private Failure(String words, int exit) {
        super(words);
        this.exit = exit;
    }

    /** It was asked rightly and could not be done. */
    static Failure of(String words) {
        return new Failure(words, Exit.FAILED);
    }

    /** It was asked wrongly. */
    static Failure askedWrongly(String words) {
        return new Failure(words, Exit.ASKED_WRONGLY);
    }

    int exit() {
        return exit;
    }
}
