package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.duskline.collector.testing.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingPackTest {
    private static final long RECEIVED = 1_777_888_800_250L;

    private static ReadingPack pack(String text) throws UnreadableMessage {
        return ReadingPack.decode(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<Sample> samples(String text) throws UnreadableMessage {
        return ClockRepair.place(pack(text), RECEIVED, List.of()).samples();
    }

    private static Sample only(String quantity, String value) throws UnreadableMessage {
        return samples("[{\"n\":\"" + quantity + "\",\"v\":" + value + "}]").get(0);
    }

    @Test
    void records_of_one_time_are_one_sample_whatever_stands_before_the_quantity() throws Exception {
        List<Sample> samples = samples("[{\"bn\":\"urn:dev:mac:0024befffe804ff1:\",\"bt\":1777888800,\"n\":\"weight\","
                + "\"u\":\"kg\",\"v\":6.1},{\"bn\":\"n07/\",\"n\":\"in\",\"v\":5},{\"bn\":\"\",\"n\":\"out\",\"v\":4},"
                + "{\"n\":\"in\",\"t\":-60,\"v\":3}]");
        assertThat(samples).hasSize(2);
        assertThat(samples.get(0).in()).isEqualTo(3);
        assertThat(samples.get(0).weightKg()).isNaN();
        assertThat(samples.get(1).in()).isEqualTo(5);
        assertThat(samples.get(1).out()).isEqualTo(4);
        assertThat(samples.get(1).weightKg()).isEqualTo(6.1);
        assertThat(samples.get(1).timeMillis()).isEqualTo(1_777_888_800_000L);
    }

    @Test
    void every_quantity_arrives_in_its_place() throws Exception {
        Sample sample = samples(
                        "[{\"bt\":1777888800,\"n\":\"in\",\"v\":1},{\"n\":\"out\",\"v\":2},{\"n\":\"weight\",\"v\":3},"
                                + "{\"n\":\"load\",\"v\":4},{\"n\":\"weight-sd\",\"v\":5},{\"n\":\"cell\",\"v\":6},{\"n\":\"box\",\"v\":7},"
                                + "{\"n\":\"rh\",\"v\":8},{\"n\":\"battery\",\"v\":9},{\"n\":\"boot\",\"v\":10},{\"n\":\"seq\",\"v\":11}]")
                .get(0);
        assertThat(sample).isEqualTo(new Sample(1_777_888_800_000L, RECEIVED, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 0));
    }

    @Test
    void boot_and_seq_number_the_whole_pack_and_are_no_sample_of_their_own() throws Exception {
        List<Sample> samples = samples(
                "[{\"t\":1777888700,\"n\":\"in\",\"v\":1},{\"t\":1777888760,\"n\":\"in\",\"v\":2},{\"n\":\"boot\",\"v\":7},{\"n\":\"seq\",\"v\":0}]");
        assertThat(samples).hasSize(2).allSatisfy(sample -> {
            assertThat(sample.boot()).isEqualTo(7);
            assertThat(sample.seq()).isZero();
        });
    }

    @Test
    void a_pack_that_contradicts_itself_keeps_both_readings() throws Exception {
        List<Sample> samples =
                samples("[{\"n\":\"weight\",\"v\":6},{\"n\":\"weight\",\"v\":7},{\"n\":\"weight\",\"v\":6}]");
        assertThat(samples).extracting(Sample::weightKg).containsExactly(6.0, 7.0);
    }

    @ParameterizedTest
    @CsvSource({
        "weight, g, 1420, 1.42",
        "cell, K, 293.15, 20",
        "battery, mV, 3700, 3.7",
        "rh, /, 0.55, 55",
        "rh, /100, 55, 55",
        "weight, '', 1.42, 1.42"
    })
    void other_registered_units_are_converted(String quantity, String unit, double value, double expected)
            throws Exception {
        Sample sample = samples("[{\"n\":\"" + quantity + "\",\"u\":\"" + unit + "\",\"v\":" + value + "}]")
                .get(0);
        double read = switch (quantity) {
            case "weight" -> sample.weightKg();
            case "cell" -> sample.cellCelsius();
            case "battery" -> sample.batteryVolts();
            default -> sample.humidityPercent();
        };
        assertThat(read).isCloseTo(expected, within(1e-9));
        assertThat(sample.marks()).isEqualTo(Mark.RELATIVE_TIME.bit());
    }

    @Test
    void a_unit_that_cannot_be_meant_is_damage_and_says_what_is_taken() {
        assertThatThrownBy(() -> pack("[{\"n\":\"weight\",\"u\":\"lb\",\"v\":3}]"))
                .isInstanceOf(UnreadableMessage.class)
                .hasMessageContaining("\"lb\"")
                .hasMessageContaining("\"kg\"");
    }

    @Test
    void a_pack_of_unknown_quantities_is_damage_but_one_among_others_is_not() throws Exception {
        assertThatThrownBy(() -> pack("[{\"n\":\"lux\",\"v\":3}]"))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.NO_QUANTITY));
        assertThat(samples("[{\"n\":\"lux\",\"v\":3},{\"n\":\"rh\",\"v\":50}]")).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({
        "in, -1, ABSURD_COUNT",
        "out, 1.5, ABSURD_COUNT",
        "in, 1e300, ABSURD_COUNT",
        "weight, 501, ABSURD_WEIGHT",
        "weight, -51, ABSURD_WEIGHT",
        "weight-sd, -0.1, ABSURD_WEIGHT_SPREAD",
        "cell, 91, ABSURD_CELL",
        "box, -61, ABSURD_BOX",
        "rh, 120, ABSURD_HUMIDITY",
        "battery, 100, ABSURD_BATTERY"
    })
    void an_absurd_value_is_kept_and_marked(String quantity, String value, Mark mark) throws Exception {
        Sample sample = only(quantity, value);
        assertThat(sample.marked(mark)).isTrue();
        double[] kept = {
            sample.in(),
            sample.out(),
            sample.weightKg(),
            sample.weightSdKg(),
            sample.cellCelsius(),
            sample.boxCelsius(),
            sample.humidityPercent(),
            sample.batteryVolts()
        };
        assertThat(kept).contains(Double.parseDouble(value));
    }

    @Test
    void what_a_converter_gives_when_it_does_not_weigh_is_absurd() throws Exception {
        JsonNode readings = Published.read("sensors.json").path("hx711").path("common_wrong_readings");
        assertThat(readings).isNotEmpty();
        for (JsonNode reading : readings) {
            assertThat(only("load", reading.path("value").asText()).marked(Mark.ABSURD_WEIGHT))
                    .as(reading.path("why").asText())
                    .isTrue();
        }
        assertThat(only("load", "8388606").marks()).isEqualTo(Mark.RELATIVE_TIME.bit());
    }

    @Test
    void what_a_thermometer_gives_before_it_measures_or_unplugged_is_absurd() throws Exception {
        JsonNode sensors = Published.read("sensors.json");
        String powerOn = sensors.path("ds18b20").path("power_on_value_c").asText();
        String unplugged =
                sensors.path("ds18b20_driver_convention").path("disconnected_c").asText();
        assertThat(only("cell", powerOn).marked(Mark.ABSURD_CELL)).isTrue();
        assertThat(only("box", unplugged).marked(Mark.ABSURD_BOX)).isTrue();
        for (JsonNode row : sensors.path("ds18b20").path("table1")) {
            double celsius = row.path("c").doubleValue();
            boolean ordinary = celsius != 85 && celsius < 90;
            assertThat(only("cell", row.path("c").asText()).marked(Mark.ABSURD_CELL))
                    .isEqualTo(!ordinary);
        }
    }

    @Test
    void a_value_sent_as_text_is_absent_and_marked_and_the_rest_of_the_pack_counts() throws Exception {
        Sample sample = samples("[{\"n\":\"weight\",\"u\":\"kg\",\"vs\":\"nan\"},{\"n\":\"in\",\"v\":12}]")
                .get(0);
        assertThat(sample.weightKg()).isNaN();
        assertThat(sample.marked(Mark.ABSURD_WEIGHT)).isTrue();
        assertThat(sample.in()).isEqualTo(12);
    }

    @Test
    void stamps_in_milliseconds_are_taken_for_what_they_are() throws Exception {
        assertThat(samples("[{\"bt\":1777888700123,\"n\":\"in\",\"v\":1}]")
                        .get(0)
                        .timeMillis())
                .isEqualTo(1_777_888_700_123L);
    }

    @Test
    void a_time_beyond_all_measure_is_damage() {
        assertThatThrownBy(() -> pack("[{\"bt\":1e300,\"n\":\"in\",\"v\":1}]"))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.TIME));
        assertThatThrownBy(() -> pack("[{\"bt\":-1e12,\"n\":\"in\",\"v\":1}]"))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.TIME));
    }
}
