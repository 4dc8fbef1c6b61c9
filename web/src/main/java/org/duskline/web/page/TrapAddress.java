package org.duskline.web.page;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URLEncoder;
import java.util.Base64;
import java.util.regex.Pattern;

/**
 * A trap's name as one segment of a path. Plain names are percent-encoded and stay readable; a name with a character
 * that servers refuse in a path, as a slash, is written as {@code ~} and its UTF-8 bytes in base64url (RFC 4648 section
 * 5).
 */
final class TrapAddress {
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._'()-]*");

    private TrapAddress() {}

    static String of(String name) {
        if (PLAIN.matcher(name).matches()) {
            return URLEncoder.encode(name, UTF_8).replace("+", "%20");
        }
        return "~" + Base64.getUrlEncoder().withoutPadding().encodeToString(name.getBytes(UTF_8));
    }

    /** The name that a path segment stands for, already percent-decoded by the server. */
    static String nameIn(String segment) {
        if (!segment.startsWith("~")) {
            return segment;
        }
        try {
            return new String(Base64.getUrlDecoder().decode(segment.substring(1)), UTF_8);
        } catch (IllegalArgumentException notBase64) {
            return segment;
        }
    }
}
