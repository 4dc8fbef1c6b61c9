package org.duskline.analyzer.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.duskline.analyzer.detect.Thresholds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Keeps docs/tuning.md in step with the sliders. */
class TuningDocumentTest {
    private static final Path DOCUMENT = Path.of("../docs/tuning.md");

    @ParameterizedTest
    @EnumSource(Dial.class)
    void every_slider_stands_in_the_document_with_its_default_its_range_and_its_effect(Dial dial) throws IOException {
        double lowest = dial.stops().get(0);
        double highest = dial.stops().get(dial.stops().size() - 1);
        String row = String.join(
                " | ",
                "| " + dial.label(),
                dial.said(dial.of(Thresholds.defaults())),
                dial.said(lowest) + " to " + dial.said(highest),
                dial.effect() + " |");
        assertThat(Files.readAllLines(DOCUMENT)).contains(row);
    }
}
