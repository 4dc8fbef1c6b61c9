package org.duskline.web.page;

/** The address asks for something that makes no sense. The message says what and how to write it instead. */
final class BadRequest extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BadRequest(String message) {
        super(message);
    }
}
