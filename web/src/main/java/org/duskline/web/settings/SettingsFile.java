package org.duskline.web.settings;

import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** Reads the YAML file into dotted keys, each with the line it stands on. */
final class SettingsFile {
    /**
     * One line of the file that says something.
     *
     * @param key dotted
     * @param value as written
     * @param line counted from 1
     */
    record Entry(String key, String value, int line) {}

    private SettingsFile() {}

    static List<Entry> read(Path file) {
        try {
            return entries(Files.readString(file, StandardCharsets.UTF_8), file);
        } catch (NoSuchFileException e) {
            throw new SettingsMistake(
                    "There is no settings file " + file + ". \"duskline settings\" prints one to start from.");
        } catch (JsonParseException e) {
            throw new SettingsMistake(file + ", line " + e.getLocation().getLineNr() + ": this is not YAML ("
                    + firstLine(e.getOriginalMessage()) + "). Indent with spaces and write \"key: value\".");
        } catch (IOException e) {
            throw new SettingsMistake("The settings file " + file + " cannot be read: " + e.getMessage());
        }
    }

    private static List<Entry> entries(String text, Path file) throws IOException {
        List<Entry> entries = new ArrayList<>();
        Deque<String> path = new ArrayDeque<>();
        try (YAMLParser parser = new YAMLFactory().createParser(text)) {
            JsonToken token = parser.nextToken();
            while (token != null) {
                int line = parser.currentTokenLocation().getLineNr();
                switch (token) {
                    case FIELD_NAME -> path.addLast(parser.currentName());
                    case START_OBJECT -> {}
                    case END_OBJECT -> path.pollLast();
                    case VALUE_NULL -> path.pollLast();
                    case START_ARRAY, END_ARRAY ->
                        throw new SettingsMistake(file + ", line " + line + ": no setting takes a list.");
                    default -> {
                        if (path.isEmpty()) {
                            throw new SettingsMistake(
                                    file + ", line " + line + ": expected \"key: value\", found only a value.");
                        }
                        entries.add(new Entry(String.join(".", path), parser.getText(), line));
                        path.removeLast();
                    }
                }
                token = parser.nextToken();
            }
        }
        return entries;
    }

    private static String firstLine(String message) {
        return message.lines().findFirst().orElse("unreadable").strip();
    }
}
