package org.duskline.web.picture;

import java.awt.Color;

/** The colours of a picture: those of the pages by day, since a mail can't ask which light its reader has. */
enum Ink {
    SHEET("sheet", 0xf8f9f5),
    NIGHT("night", 0xdbdfe6),
    INK("ink", 0x1d2932),
    INK_SOFT("ink-soft", 0x4d5b64),
    RULE("rule", 0xcbd2cd),
    RULE_STRONG("rule-strong", 0x77858a),
    IN("in", 0x0f6079),
    OUT("out", 0x8b4268),
    WEIGHT("weight", 0x496324),
    ACT("act", 0x9c3425);

    private final String token;
    private final Color colour;

    Ink(String token, int rgb) {
        this.token = token;
        this.colour = new Color(rgb);
    }

    /** Its name among the pages' colours. */
    String token() {
        return token;
    }

    Color colour() {
        return colour;
    }
}
