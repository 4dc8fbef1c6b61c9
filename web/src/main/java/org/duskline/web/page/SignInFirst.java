package org.duskline.web.page;

/** Somebody outside asks for what is kept inside. */
final class SignInFirst extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String where;

    /** @param where the address at which they may come in */
    SignInFirst(String where) {
        super("Sign in at " + where + " first.");
        this.where = where;
    }

    String where() {
        return where;
    }
}
