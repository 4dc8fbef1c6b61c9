package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What RFC 8428 says beyond its examples; the section is named at each test. */
class SenmlPackTest {
    private static List<SenmlRecord> json(String text) throws UnreadableMessage {
        return SenmlPack.decode(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<SenmlRecord> cbor(String hex) throws UnreadableMessage {
        return SenmlPack.decode(HexFormat.of().parseHex(hex.replace(" ", "")));
    }

    private static DamageReason reasonOf(String text) {
        try {
            json(text);
        } catch (UnreadableMessage damaged) {
            return damaged.reason();
        }
        throw new AssertionError("This was decoded: " + text);
    }

    @Test
    void a_base_field_holds_until_the_next_of_its_kind_section_4() throws Exception {
        List<SenmlRecord> records = json(
                "[{\"bn\":\"a:\",\"bt\":1700000000,\"bu\":\"kg\",\"n\":\"weight\",\"v\":1},"
                        + "{\"n\":\"cell\",\"u\":\"Cel\",\"t\":-2,\"v\":2},{\"bn\":\"b/\",\"bu\":\"V\",\"n\":\"battery\",\"v\":3}]");
        assertThat(records).extracting(SenmlRecord::name).containsExactly("a:weight", "a:cell", "b/battery");
        assertThat(records).extracting(SenmlRecord::unit).containsExactly("kg", "Cel", "V");
        assertThat(records).extracting(SenmlRecord::seconds).containsExactly(1.7e9, 1.699999998e9, 1.7e9);
    }

    @Test
    void a_base_value_is_added_and_stands_alone_where_the_value_is_left_out_section_4_5_4() throws Exception {
        assertThat(json("[{\"bn\":\"a:\",\"bv\":100,\"n\":\"in\",\"v\":4},{\"n\":\"out\",\"v\":-1},{\"n\":\"load\"}]"))
                .extracting(SenmlRecord::value)
                .containsExactly(104.0, 99.0, 100.0);
    }

    @Test
    void a_sum_is_read_beside_or_without_a_value_section_4_5_4() throws Exception {
        List<SenmlRecord> records = json("[{\"n\":\"e\",\"bs\":10,\"s\":5},{\"n\":\"e\",\"v\":1}]");
        assertThat(records).extracting(SenmlRecord::sum).containsExactly(15.0, 10.0);
        assertThat(records.get(0).kind()).isEqualTo(SenmlRecord.ValueKind.NONE);
    }

    @Test
    void a_later_version_must_not_be_used_section_4_4() {
        assertThat(reasonOf("[{\"bver\":11,\"n\":\"weight\",\"v\":1}]")).isEqualTo(DamageReason.VERSION);
        assertThat(reasonOf("[{\"bver\":0,\"n\":\"weight\",\"v\":1}]")).isEqualTo(DamageReason.VERSION);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1},{\"bver\":5,\"n\":\"cell\",\"v\":1}]"))
                .isEqualTo(DamageReason.VERSION);
    }

    @Test
    void an_unknown_field_is_passed_over_unless_it_must_be_understood_section_4_4() throws Exception {
        assertThat(json("[{\"n\":\"weight\",\"v\":1,\"firmware\":{\"rev\":[1,2]}}]"))
                .hasSize(1);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1,\"scaled_\":true}]")).isEqualTo(DamageReason.MUST_UNDERSTAND);
    }

    @ParameterizedTest
    @CsvSource({"_weight", "wei ght", "wéight", ":weight", "''"})
    void a_name_outside_the_allowed_characters_is_damage_section_4_5_1(String name) {
        assertThat(reasonOf("[{\"n\":\"" + name + "\",\"v\":1}]")).isEqualTo(DamageReason.NAME);
    }

    @Test
    void a_record_without_a_value_does_not_spoil_the_others() throws Exception {
        assertThat(json("[{\"n\":\"box\",\"u\":\"Cel\"},{\"n\":\"weight\",\"v\":1}]"))
                .extracting(SenmlRecord::name)
                .containsExactly("weight");
    }

    @Test
    void a_value_of_two_kinds_or_of_a_wrong_type_is_damage_section_4_2() {
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1,\"vs\":\"1\"}]")).isEqualTo(DamageReason.LABEL);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":\"1\"}]")).isEqualTo(DamageReason.LABEL);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1,\"v\":2}]")).isEqualTo(DamageReason.LABEL);
        assertThat(reasonOf("[{\"n\":7,\"v\":1}]")).isEqualTo(DamageReason.LABEL);
    }

    @Test
    void what_is_cut_off_garbled_or_too_long_says_so() {
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1},{\"n\":\"ce")).isEqualTo(DamageReason.TORN);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":nan}]")).isEqualTo(DamageReason.ILL_FORMED);
        assertThat(reasonOf("[{\"n\":\"weight\",\"v\":1}]]")).isEqualTo(DamageReason.TRAILING);
        assertThat(reasonOf("[1]")).isEqualTo(DamageReason.NOT_A_RECORD);
        assertThat(reasonOf("{\"n\":\"weight\",\"v\":1}")).isEqualTo(DamageReason.NOT_SENML);
        assertThat(reasonOf("  ")).isEqualTo(DamageReason.EMPTY);
        assertThat(reasonOf("")).isEqualTo(DamageReason.EMPTY);
    }

    @Test
    void json_that_is_not_utf8_is_damage() {
        byte[] payload = "[{\"n\":\"weight\",\"v\":1,\"x\":\"?\"}]".getBytes(StandardCharsets.US_ASCII);
        payload[payload.length - 4] = (byte) 0xe9;
        assertThatThrownBy(() -> SenmlPack.decode(payload))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.ILL_FORMED));
    }

    @Test
    void a_decimal_fraction_is_exact_as_value_and_as_time_section_6() throws Exception {
        // [{0: "weight", 2: 4([-3, 6125]), 6: 4([-1, -15])}]
        List<SenmlRecord> records = cbor("81 a3 00 66776569676874 02 c4 82 22 1917ed 06 c4 82 20 2e");
        assertThat(records).singleElement().satisfies(record -> {
            assertThat(record.value()).isEqualTo(6.125);
            assertThat(record.seconds()).isEqualTo(-1.5);
        });
    }

    @Test
    void a_decimal_fraction_with_a_big_mantissa_is_read_rfc_8949_section_3_4_4() throws Exception {
        // 4([-20, 2(h'010000000000000000')]) is 2^64 / 10^20
        List<SenmlRecord> records = cbor("81 a2 00 66776569676874 02 c4 82 33 c2 49 010000000000000000");
        assertThat(records.get(0).value()).isEqualTo(Math.pow(2, 64) / 1e20);
    }

    @Test
    void arrays_and_maps_of_indefinite_length_and_text_labels_are_read_section_6() throws Exception {
        // [_ {_ -2: "n07/", "n": "cell", 2: 1.5_1}, {0: "box", "v": 2}]
        List<SenmlRecord> records = cbor("9f bf 21 646e30372f 616e 6463656c6c 02 f93e00 ff a2 00 63626f78 6176 02 ff");
        assertThat(records).extracting(SenmlRecord::name).containsExactly("n07/cell", "n07/box");
        assertThat(records).extracting(SenmlRecord::value).containsExactly(1.5, 2.0);
    }

    @Test
    void bytes_behind_a_cbor_pack_are_damage() {
        assertThatThrownBy(() -> cbor("81 a2 00 63626f78 02 01 00"))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.TRAILING));
    }

    @Test
    void a_cbor_data_value_is_a_byte_string_section_6() throws Exception {
        assertThat(cbor("81 a2 00 616e 08 43 616263").get(0).text()).isEqualTo("YWJj");
    }

    @Test
    void nesting_without_end_is_damage_not_a_stack_overflow() {
        byte[] deep = new byte[100_000];
        java.util.Arrays.fill(deep, (byte) 0x81);
        assertThatThrownBy(() -> SenmlPack.decode(deep)).isInstanceOf(UnreadableMessage.class);
        assertThat(reasonOf("[{\"x\":" + "[".repeat(100_000))).isIn(DamageReason.ILL_FORMED, DamageReason.TORN);
    }
}
