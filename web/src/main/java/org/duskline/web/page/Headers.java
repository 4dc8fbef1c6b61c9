package org.duskline.web.page;

import io.javalin.http.Context;

/**
 * What a browser may do with our pages: run our own scripts and styles, talk to us, and nothing else. No inline script
 * or style, no other host, no framing.
 */
final class Headers {
    static final String CONTENT_SECURITY_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
            + "img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; "
            + "base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private Headers() {}

    static void set(Context context) {
        context.header("Content-Security-Policy", CONTENT_SECURITY_POLICY)
                .header("X-Content-Type-Options", "nosniff")
                .header("Referrer-Policy", "same-origin")
                .header("Cross-Origin-Opener-Policy", "same-origin")
                .header("Cross-Origin-Resource-Policy", "same-origin");
    }
}
