package org.duskline.web.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Keeps docs/configuration.md and docs/duskline.yaml in step with the code. */
class SettingsDocumentTest {
    private static final Path DOCS = Path.of("..", "docs");

    @TempDir
    Path folder;

    @Test
    void the_committed_example_is_the_one_that_the_program_prints() throws Exception {
        assertThat(DOCS.resolve("duskline.yaml")).hasContent(ExampleFile.text());
    }

    @Test
    void the_example_can_be_used_as_it_is_and_says_nothing_but_the_standard_settings() throws Exception {
        Settings example = read(ExampleFile.text());
        Settings standard = Settings.read(Optional.empty(), Map.of());
        assertThat(Key.values())
                .allSatisfy(key -> assertThat(example.value(key)).isEqualTo(standard.value(key)));
    }

    @Test
    void the_example_can_be_used_with_everything_in_it_switched_on() throws Exception {
        Settings all = read(ExampleFile.text().replaceAll("(?m)^( *)# (?=[a-z]+: )", "$1"));
        assertThat(Key.values()).allSatisfy(key -> assertThat(all.value(key)).isPresent());
    }

    @Test
    void every_setting_is_documented_with_its_variable_its_standard_value_and_its_meaning() throws Exception {
        List<String> expected = Arrays.stream(Key.values())
                .map(key -> "| `%s` | `%s` | %s | %s | %s |"
                        .formatted(
                                key.dotted(),
                                key.environmentName(),
                                key.standard().map(value -> "`" + value + "`").orElse(""),
                                key.form().words(),
                                key.meaning()))
                .toList();
        List<String> written = new ArrayList<>(Files.readAllLines(DOCS.resolve("configuration.md")).stream()
                .filter(line -> line.startsWith("| `"))
                .toList());
        assertThat(written).containsExactlyElementsOf(expected);
    }

    private Settings read(String text) throws IOException {
        return Settings.read(Optional.of(Files.writeString(folder.resolve("duskline.yaml"), text)), Map.of());
    }
}
