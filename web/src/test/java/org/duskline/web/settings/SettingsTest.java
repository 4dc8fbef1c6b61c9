package org.duskline.web.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsTest {
    @TempDir
    Path folder;

    @Test
    void without_a_file_the_standard_settings_hold_and_duskline_runs_its_own_broker_on_loopback() {
        Settings settings = Settings.read(Optional.empty(), Map.of());
        assertThat(settings.broker()).isEmpty();
        assertThat(settings.brokerHost()).isEqualTo("127.0.0.1");
        assertThat(settings.pagesHost()).isEqualTo("127.0.0.1");
        assertThat(settings.topics().root()).isEqualTo("traps");
    }

    @Test
    void the_file_is_read_and_its_paths_are_looked_up_beside_it() throws Exception {
        Settings settings = read("""
                database: season/2026.db
                line: line.geojson
                mqtt:
                  url: mqtts://broker.example
                  user: keeper
                  password: elderflower
                  authority: /etc/duskline/authority.pem
                pages:
                  port: 0
                """);
        assertThat(settings.database()).isEqualTo(folder.resolve("season/2026.db"));
        assertThat(settings.line()).contains(folder.resolve("line.geojson"));
        assertThat(settings.broker().orElseThrow()).satisfies(broker -> {
            assertThat(broker).hasToString("mqtts://broker.example:8883");
            assertThat(broker.user()).contains("keeper");
            assertThat(broker.password()).contains("elderflower");
            assertThat(broker.authority()).contains(Path.of("/etc/duskline/authority.pem"));
        });
        assertThat(settings.pagesPort()).isZero();
    }

    @Test
    void the_environment_goes_before_the_file() throws Exception {
        Settings settings = read("mqtt: {root: farm/traps}", Map.of("DUSKLINE_MQTT_ROOT", "orchard"));
        assertThat(settings.topics().root()).isEqualTo("orchard");
    }

    @Test
    void a_section_without_entries_says_nothing() throws Exception {
        assertThat(read("mqtt:\n  # url: mqtt://broker.example\npages:\n").broker())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    databse: x                   | line 1: there is no setting "databse". Did you mean "database"?
                    mqtt: {urll: x}              | there is no setting "mqtt.urll". Did you mean "mqtt.url"?
                    bees: many                   | line 1: there is no setting "bees".
                    pages: {port: eighty}        | line 1: pages.port must be a number from 0 to 65535
                    pages: {port: 70000}         | not "70000"
                    mqtt: {url: 'http://x'}      | Write it as mqtt://host:1883
                    mqtt: {user: keeper}         | no broker (mqtt.url)
                    mqtt: {root: 'traps/#'}      | cannot be the root
                    log: {detail: chatty}        | log.detail must be error, warn, info or debug
                    database: [a, b]             | no setting takes a list
                    just words                   | expected "key: value"
                    broker: {host: 0.0.0.0}      | no file with passwords is named (broker.passwords)
                    "database: 'open             | line 1: this is not YAML
                    """)
    void a_mistake_is_told_with_its_place_and_what_to_do(String text, String said) {
        assertThatThrownBy(() -> read(text)).isInstanceOf(SettingsMistake.class).hasMessageContaining(said);
    }

    @Test
    void an_unknown_variable_is_refused_with_the_nearest_name() {
        assertThatThrownBy(() -> Settings.read(Optional.empty(), Map.of("DUSKLINE_MQTT_PASSWORT", "elderflower")))
                .hasMessageContaining("DUSKLINE_MQTT_PASSWORT")
                .hasMessageContaining("Did you mean \"DUSKLINE_MQTT_PASSWORD\"?")
                .hasMessageNotContaining("elderflower");
    }

    @Test
    void a_missing_file_is_told_with_the_way_to_get_one() {
        assertThatThrownBy(() -> Settings.read(Optional.of(folder.resolve("none.yaml")), Map.of()))
                .hasMessageContaining("none.yaml")
                .hasMessageContaining("duskline settings");
    }

    private Settings read(String text) throws IOException {
        return read(text, Map.of());
    }

    private Settings read(String text, Map<String, String> environment) throws IOException {
        Path file = Files.writeString(folder.resolve("duskline.yaml"), text);
        return Settings.read(Optional.of(file), environment);
    }
}
