package org.duskline.web.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/** A small invented season on disk: one trap, one node, a few messages of every sort. */
final class RecordedSeason {
    private RecordedSeason() {}

    static Path line(Path folder) throws IOException {
        return Files.writeString(folder.resolve("line.geojson"), """
                {"type":"FeatureCollection","features":[{"type":"Feature",
                 "geometry":{"type":"Point","coordinates":[13.1,47.2]},
                 "properties":{"trap":"Mill Race","node":"n07","zone":"Europe/Vienna","fitted":"both"}}]}
                """);
    }

    /** Noon on 12 May 2026 in Vienna is 10:00 UTC. */
    static List<String> messages() {
        return List.of(
                "{\"received\":1778580000.250,\"topic\":\"traps/n07/readings\",\"payload\":[{\"bt\":1778580000,\"n\":\"in\","
                        + "\"u\":\"count\",\"v\":1204},{\"n\":\"weight\",\"u\":\"kg\",\"v\":8.125},{\"n\":\"cell\",\"u\":\"Cel\",\"v\":21.5}]}",
                "{\"received\":1778580001.100,\"topic\":\"traps/n07/status\",\"text\":\"online\"}",
                "{\"received\":1778580060.000,\"topic\":\"traps/n07/readings\",\"payload\":[{\"bt\":1778580060,\"n\":\"in\","
                        + "\"u\":\"count\",\"v\":1206},{\"n\":\"weight\",\"u\":\"kg\",\"v\":8.13}]}",
                "{\"received\":1778580060.100,\"topic\":\"traps/n07/readings\",\"payload\":[{\"bt\":1778580060,\"n\":\"in\","
                        + "\"u\":\"count\",\"v\":1206},{\"n\":\"weight\",\"u\":\"kg\",\"v\":8.13}]}",
                "{\"received\":1778580090.000,\"topic\":\"traps/n07/readings\",\"text\":\"damaged on the way\"}",
                "this line is no message");
    }

    static Path plain(Path folder) throws IOException {
        return Files.write(folder.resolve("season.jsonl"), messages());
    }

    static Path compressed(Path folder) throws IOException {
        Path file = folder.resolve("season.jsonl.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write((String.join("\n", messages()) + "\n").getBytes(StandardCharsets.UTF_8));
        }
        return file;
    }
}
