package org.duskline.analyzer.stats;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A file of published check values; see the README beside them for their sources. */
public final class CheckFile {
    private CheckFile() {}

    /** One row of a table, by column name. */
    public record Row(Map<String, String> cells) {
        public String text(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new IllegalArgumentException("No column " + column + " among " + cells.keySet());
            }
            return cell;
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        public boolean has(String column) {
            return !text(column).isEmpty();
        }
    }

    public static List<Row> table(String name) {
        List<String> lines = text(name).lines().toList();
        List<String> header = split(lines.get(0));
        List<Row> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> cells = split(line);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < header.size(); i++) {
                row.put(header.get(i), cells.get(i));
            }
            rows.add(new Row(row));
        }
        return rows;
    }

    public static JsonNode json(String name) {
        try {
            return new ObjectMapper().readTree(text(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double[] numbers(JsonNode array) {
        double[] numbers = new double[array.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = Double.parseDouble(array.get(i).asText());
        }
        return numbers;
    }

    public static String text(String name) {
        try (InputStream stream = CheckFile.class.getResourceAsStream("/checks/" + name)) {
            if (stream == null) {
                throw new IllegalArgumentException("No check file " + name);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> split(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
