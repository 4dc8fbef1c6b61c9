/* Bytes worked by hand from RFC 8428 (tables 2 and 4) and RFC 8949 (3.1, 3.4.4,
 * appendix A: 273.15 as c48221196ab3). tests/decode_packs.py reads what the encoder
 * writes with an independent decoder. */
#include "check.h"
#include "senml.h"
#include "suites.h"
#include "text.h"

static const char BASE[] = "urn:dev:mac:02a1c0fffe000007:";

static dl_sample full_sample(void) {
    return (dl_sample){.serial = 1,
                       .boot = 3,
                       .counted = true,
                       .in = 1204,
                       .out = 1187,
                       .weight_g = 12345,
                       .weight_sd_g = 4,
                       .load_counts = DL_MISSING,
                       .cell_cc = -50,
                       .box_cc = 2150,
                       .battery_mv = 3900};
}

static dl_sample bare_counter(void) {
    return (dl_sample){.boot = 1,
                       .counted = true,
                       .weight_g = DL_MISSING,
                       .weight_sd_g = DL_MISSING,
                       .load_counts = DL_MISSING,
                       .cell_cc = DL_MISSING,
                       .box_cc = DL_MISSING,
                       .battery_mv = DL_MISSING};
}

static const dl_time NOON = {.absolute = true, .unix_s = 1777888800};

static void decimals_are_written_digit_for_digit(void) {
    static const struct {
        int32_t value;
        unsigned places;
        const char *text;
    } table[] = {{12345, 3, "12.345"},
                 {-50, 2, "-0.5"},
                 {-5, 3, "-0.005"},
                 {4, 3, "0.004"},
                 {3900, 3, "3.9"},
                 {0, 3, "0"},
                 {2000, 3, "2"},
                 {INT32_MAX, 3, "2147483.647"},
                 {-2147483647, 0, "-2147483647"}};
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        char bytes[24];
        dl_text text;
        dl_text_begin(&text, bytes, sizeof bytes);
        dl_text_decimal(&text, table[i].value, table[i].places);
        CHECK_TEXT(bytes, text.used, table[i].text);
    }
}

static void a_full_sample_in_json(void) {
    uint8_t bytes[DL_PACK_BYTES_MIN];
    dl_pack pack;
    dl_pack_begin(&pack, DL_JSON, bytes, sizeof bytes);
    dl_sample sample = full_sample();
    CHECK(dl_pack_add(&pack, BASE, &sample, NOON, 9));
    CHECK_TEXT(bytes, dl_pack_end(&pack),
               "[{\"bn\":\"urn:dev:mac:02a1c0fffe000007:\",\"bt\":1777888800,\"n\":\"in\",\"u\":\"count\",\"v\":1204},"
               "{\"n\":\"out\",\"u\":\"count\",\"v\":1187},{\"n\":\"weight\",\"u\":\"kg\",\"v\":12.345},"
               "{\"n\":\"weight-sd\",\"u\":\"kg\",\"v\":0.004},{\"n\":\"cell\",\"u\":\"Cel\",\"v\":-0.5},"
               "{\"n\":\"box\",\"u\":\"Cel\",\"v\":21.5},{\"n\":\"battery\",\"u\":\"V\",\"v\":3.9},"
               "{\"n\":\"boot\",\"u\":\"count\",\"v\":3},{\"n\":\"seq\",\"u\":\"count\",\"v\":9}]");
}

static void a_small_sample_in_cbor_byte_for_byte(void) {
    uint8_t bytes[DL_PACK_BYTES_MIN];
    dl_pack pack;
    dl_pack_begin(&pack, DL_CBOR, bytes, sizeof bytes);
    dl_sample sample = bare_counter();
    sample.counted = false;
    sample.weight_g = 27315;
    CHECK(dl_pack_add(&pack, "n:", &sample, NOON, 0));
    static const uint8_t expected[] = {0x82, 0xA5, 0x21, 0x62, 'n',  ':',  0x22, 0x1A, 0x69, 0xF8, 0x6E, 0x20,
                                       0x00, 0x66, 'w',  'e',  'i',  'g',  'h',  't',  0x01, 0x62, 'k',  'g',
                                       0x02, 0xC4, 0x82, 0x22, 0x19, 0x6A, 0xB3, 0xA3, 0x00, 0x64, 'b',  'o',
                                       'o',  't',  0x01, 0x65, 'c',  'o',  'u',  'n',  't',  0x02, 0x01};
    size_t length = dl_pack_end(&pack);
    CHECK_NUMBER(length, sizeof expected);
    CHECK(memcmp(bytes, expected, sizeof expected) == 0);
}

static void relative_times_are_negative_and_now_is_zero(void) {
    uint8_t bytes[DL_PACK_BYTES_MIN];
    dl_pack pack;
    dl_pack_begin(&pack, DL_JSON, bytes, sizeof bytes);
    dl_sample sample = bare_counter();
    CHECK(dl_pack_add(&pack, "n:", &sample, (dl_time){.age_s = 300}, 0));
    CHECK(dl_pack_add(&pack, NULL, &sample, (dl_time){.age_s = 0}, 0));
    CHECK_TEXT(
        bytes, dl_pack_end(&pack),
        "[{\"bn\":\"n:\",\"bt\":-300,\"n\":\"in\",\"u\":\"count\",\"v\":0},{\"n\":\"out\",\"u\":\"count\",\"v\":0},"
        "{\"n\":\"boot\",\"u\":\"count\",\"v\":1},"
        "{\"bt\":0,\"n\":\"in\",\"u\":\"count\",\"v\":0},{\"n\":\"out\",\"u\":\"count\",\"v\":0},"
        "{\"n\":\"boot\",\"u\":\"count\",\"v\":1}]");
}

static void a_scale_without_calibration_sends_its_load(void) {
    uint8_t bytes[DL_PACK_BYTES_MIN];
    dl_pack pack;
    dl_pack_begin(&pack, DL_JSON, bytes, sizeof bytes);
    dl_sample sample = bare_counter();
    sample.counted = false;
    sample.load_counts = -70000;
    CHECK(dl_pack_add(&pack, "n:", &sample, NOON, 0));
    CHECK_TEXT(bytes, dl_pack_end(&pack),
               "[{\"bn\":\"n:\",\"bt\":1777888800,\"n\":\"load\",\"u\":\"count\",\"v\":-70000},"
               "{\"n\":\"boot\",\"u\":\"count\",\"v\":1}]");
}

static void what_does_not_fit_is_left_out_whole(void) {
    for (int format = 0; format < 2; format++) {
        for (size_t size = 8; size <= DL_PACK_BYTES_MIN; size++) {
            uint8_t bytes[DL_PACK_BYTES_MIN];
            dl_pack pack;
            dl_pack_begin(&pack, (dl_format)format, bytes, size);
            dl_sample sample = full_sample();
            uint32_t fitted = 0;
            while (dl_pack_add(&pack, fitted == 0 ? BASE : NULL, &sample, NOON, 0)) {
                fitted++;
            }
            size_t length = dl_pack_end(&pack);
            CHECK(length <= size);
            CHECK_NUMBER(pack.records, fitted * 8);
            CHECK(format == 1 || length == 0 || bytes[length - 1] == ']');
        }
    }
}

static void the_largest_sample_fits_the_smallest_pack(void) {
    dl_sample sample = full_sample();
    sample.in = sample.out = sample.boot = UINT32_MAX;
    sample.weight_g = sample.weight_sd_g = sample.cell_cc = sample.box_cc = sample.battery_mv = -INT32_MAX;
    for (int format = 0; format < 2; format++) {
        uint8_t bytes[DL_PACK_BYTES_MIN];
        dl_pack pack;
        dl_pack_begin(&pack, (dl_format)format, bytes, sizeof bytes);
        CHECK(dl_pack_add(&pack, "urn:dev:mac:02a1c0fffe000007:a-longer-name-yet:", &sample, NOON, UINT32_MAX));
    }
}

static void long_packs_get_the_two_byte_header(void) {
    uint8_t bytes[2048];
    dl_pack pack;
    dl_pack_begin(&pack, DL_CBOR, bytes, sizeof bytes);
    dl_sample sample = full_sample();
    for (int i = 0; i < 3; i++) {
        CHECK(dl_pack_add(&pack, i == 0 ? BASE : NULL, &sample, NOON, 0));
    }
    CHECK(dl_pack_end(&pack) > 0);
    CHECK_NUMBER(bytes[0], 0x98);
    CHECK_NUMBER(bytes[1], 24);
}

const test_case wire_tests[] = {TEST(decimals_are_written_digit_for_digit),
                                TEST(a_full_sample_in_json),
                                TEST(a_small_sample_in_cbor_byte_for_byte),
                                TEST(relative_times_are_negative_and_now_is_zero),
                                TEST(a_scale_without_calibration_sends_its_load),
                                TEST(what_does_not_fit_is_left_out_whole),
                                TEST(the_largest_sample_fits_the_smallest_pack),
                                TEST(long_packs_get_the_two_byte_header),
                                {NULL, NULL}};
