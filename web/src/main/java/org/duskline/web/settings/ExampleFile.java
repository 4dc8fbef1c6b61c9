package org.duskline.web.settings;

import java.util.ArrayList;
import java.util.List;

/** The commented example of a settings file, made from the keys so that it can never miss one. */
public final class ExampleFile {
    private static final int WIDTH = 96;
    private static final String HEADING = """
            # Duskline's settings. Each can also be given in the environment, which goes before this file:
            # mqtt.url is DUSKLINE_MQTT_URL. What stands behind "# " at the start of a line has no standard value
            # and is an example. Paths are looked up beside this file.
            """;

    private ExampleFile() {}

    public static String text() {
        StringBuilder text = new StringBuilder(HEADING);
        String section = "";
        for (Key key : Key.values()) {
            int dot = key.dotted().indexOf('.');
            String own = dot < 0 ? "" : key.dotted().substring(0, dot);
            text.append('\n');
            if (!own.equals(section)) {
                text.append(own).append(":\n");
                section = own;
            }
            appendKey(text, key, dot < 0 ? "" : "  ", key.dotted().substring(dot + 1));
        }
        return text.toString();
    }

    private static void appendKey(StringBuilder text, Key key, String indent, String name) {
        for (String line : wrapped(key.meaning(), WIDTH - indent.length())) {
            text.append(indent).append("# ").append(line).append('\n');
        }
        text.append(indent)
                .append(key.standard().isPresent() ? "" : "# ")
                .append(name)
                .append(": ")
                .append(key.shown())
                .append('\n');
    }

    private static List<String> wrapped(String words, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ")) {
            if (line.length() + 1 + word.length() > width && line.length() > 0) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
