package org.duskline.web.page.board;

/** The stored data can't be read. The message says what failed, where, and what to do next. */
public final class BoardUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public BoardUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
