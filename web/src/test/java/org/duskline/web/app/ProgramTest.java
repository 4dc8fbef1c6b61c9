package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ProgramTest {
    @TempDir
    Path folder;

    static Stream<String> commands() {
        Surroundings nowhere = new Surroundings(
                new PrintStream(PrintStream.nullOutputStream()),
                new PrintStream(PrintStream.nullOutputStream()),
                Map.of(),
                () -> Instant.EPOCH,
                InputStream.nullInputStream());
        return Program.commandLine(nowhere).getSubcommands().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void every_command_explains_itself_and_tells_its_version(String command) {
        Session help = Session.of(command, "--help");
        assertThat(help.exit()).isEqualTo(Exit.DONE);
        assertThat(help.out()).contains("Usage: duskline " + command);
        assertThat(help.err()).isEmpty();

        Session version = Session.of(command, "--version");
        assertThat(version.exit()).isEqualTo(Exit.DONE);
        assertThat(version.out()).startsWith("duskline ");
    }

    @Test
    void the_program_explains_itself_with_its_exit_codes() {
        Session help = Session.of("--help");
        assertThat(help.exit()).isEqualTo(Exit.DONE);
        assertThat(help.out())
                .contains("Exit codes:", "0   done", "1   failed", "2   asked wrongly", "import", "doctor");
        assertThat(Session.of("--version").out()).startsWith("duskline ");
    }

    @Test
    void a_mistyped_command_gets_the_nearest_one() {
        Session session = Session.of("docter");
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err()).contains("docter", "Did you mean \"doctor\"?").doesNotContain("\tat ");
        assertThat(session.out()).isEmpty();
    }

    @Test
    void a_mistyped_option_gets_the_nearest_one() {
        Session session = Session.of("settings", "--curent");
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err()).contains("--curent", "--current", "duskline settings --help");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "help | There is no command \"help\"",
                "settings extra | has no use for \"extra\"",
                "demo --port abc | \"abc\" is no whole number",
                "demo --speed quickly | \"quickly\" is no number",
                "demo --port 99999 | 0 to 65535",
                "import | Missing required parameter: 'STREAM'",
                "export | Missing required option: '--trap=NAME'"
            })
    void a_mistake_on_the_command_line_is_named_and_nothing_is_begun(String typed, String words) {
        Session session = Session.of(typed.split(" "));
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err()).contains(words).doesNotContain("\tat ").doesNotContain("\n\n");
        assertThat(session.out()).isEmpty();
    }

    @Test
    void no_command_at_all_is_a_mistake() {
        Session session = Session.of();
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err()).contains("Which command?");
    }

    @Test
    void a_mistake_in_the_settings_is_told_without_a_stack_trace() throws Exception {
        Path file = Files.writeString(folder.resolve("duskline.yaml"), "mqtt:\n  passwrod: elderflower\n");
        Session session = Session.of("settings", "--current", "--config", file.toString());
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err())
                .contains("line 2", "there is no setting \"mqtt.passwrod\"", "Did you mean \"mqtt.password\"?")
                .doesNotContain("\tat ");
    }

    @Test
    void the_settings_that_hold_are_shown_without_the_password() {
        Session session = Session.with(
                Map.of(
                        "DUSKLINE_MQTT_URL", "mqtt://broker.example",
                        "DUSKLINE_MQTT_USER", "keeper",
                        "DUSKLINE_MQTT_PASSWORD", "elderflower"),
                "settings",
                "--current");
        assertThat(session.out())
                .contains("mqtt.url: mqtt://broker.example", "mqtt.password: (hidden)", "mqtt.root: traps")
                .doesNotContain("elderflower");
    }
}
