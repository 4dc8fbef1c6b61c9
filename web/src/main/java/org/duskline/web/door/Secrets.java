package org.duskline.web.door;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** What must not be guessed: random marks, codes that can be typed, and their hashes. */
final class Secrets {
    private static final int TOKEN_BYTES = 32;
    private static final int CODE_GROUPS = 3;
    private static final int CODE_GROUP_LETTERS = 4;

    /** Without letters and digits that are taken for each other. */
    private static final String CODE_LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789";

    private final SecureRandom random = new SecureRandom();

    String token() {
        byte[] bytes = new byte[TOKEN_BYTES];
        random.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** About 59 bits, in groups, to be typed from one screen into another. */
    String code() {
        StringBuilder code = new StringBuilder();
        for (int group = 0; group < CODE_GROUPS; group++) {
            code.append(group == 0 ? "" : "-");
            for (int letter = 0; letter < CODE_GROUP_LETTERS; letter++) {
                code.append(CODE_LETTERS.charAt(random.nextInt(CODE_LETTERS.length())));
            }
        }
        return code.toString();
    }

    /** A code as typed by somebody, without the spaces and small letters that they may have put in. */
    static String tidy(String code) {
        return code.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    }

    /** What is kept of a secret: enough to know it again, too little to make it. */
    static String mark(String secret) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(secret.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("This Java has no SHA-256, which every Java must have.", e);
        }
    }

    static String seal(String key, String what) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(key.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
            byte[] sealed = mac.doFinal(what.getBytes(StandardCharsets.UTF_8));
            return Base64.getUrlEncoder().withoutPadding().encodeToString(sealed);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("This Java has no HmacSHA256, which every Java must have.", e);
        }
    }

    /** Takes the same time wherever the two differ. */
    static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
