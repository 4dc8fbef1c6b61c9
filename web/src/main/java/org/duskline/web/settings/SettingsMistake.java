package org.duskline.web.settings;

/** A mistake in the settings, in words that say where it is and what to do. */
public final class SettingsMistake extends RuntimeException {
    private static final long serialVersionUID = 1;

    SettingsMistake(String words) {
        super(words);
    }
}
