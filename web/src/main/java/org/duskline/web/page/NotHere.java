package org.duskline.web.page;

/** Nothing is kept under this address. The message says what was looked for. */
final class NotHere extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotHere(String message) {
        super(message);
    }
}
