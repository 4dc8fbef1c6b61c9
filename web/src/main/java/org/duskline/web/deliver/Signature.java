package org.duskline.web.deliver;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA256 (RFC 2104, FIPS 180-4). */
final class Signature {
    private static final String ALGORITHM = "HmacSHA256";

    private Signature() {}

    static byte[] of(byte[] key, byte[] text) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(key, ALGORITHM));
            return mac.doFinal(text);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("This Java has no " + ALGORITHM + ", which every Java must have.", e);
        }
    }

    static byte[] of(byte[] key, String text) {
        return of(key, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Takes the same time wherever the two differ. */
    static boolean same(byte[] one, byte[] other) {
        return MessageDigest.isEqual(one, other);
    }
}
