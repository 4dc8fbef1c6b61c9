/* Published values: the HX711 data sheet (Avia Semiconductor, pages 3 to 5) for the
 * 24-bit word, the DS18B20 data sheet (Maxim, tables 1 and 2, figure 9) for the
 * thermometer, the catalogue check value of CRC-8/MAXIM (recalled from memory). */
#include "beam.h"
#include "check.h"
#include "suites.h"
#include "thermometer.h"
#include "weighing.h"

static void converter_words_are_twos_complement(void) {
    CHECK_NUMBER(dl_converter_counts(0x000001), 1);
    CHECK_NUMBER(dl_converter_counts(0x7FFFFE), 8388606);
    CHECK_NUMBER(dl_converter_counts(0x800001), -8388607);
    CHECK_NUMBER(dl_converter_counts(0xFFFFFE), -2);
}

static void saturated_and_cut_lines_are_missing_never_zero(void) {
    CHECK_NUMBER(dl_converter_counts(0x7FFFFF), DL_MISSING);
    CHECK_NUMBER(dl_converter_counts(0x800000), DL_MISSING);
    CHECK_NUMBER(dl_converter_counts(0xFFFFFF), DL_MISSING);
    CHECK_NUMBER(dl_converter_counts(0x000000), DL_MISSING);
}

static void thermometer_words_follow_the_data_sheet(void) {
    static const struct {
        uint16_t word;
        int32_t cc;
    } table[] = {{0x07D0, 12500}, {0x0550, 8500}, {0x0191, 2506},  {0x00A2, 1013},  {0x0008, 50},
                 {0x0000, 0},     {0xFFF8, -50},  {0xFF5E, -1013}, {0xFE6F, -2506}, {0xFC90, -5500}};
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        CHECK_NUMBER(dl_temperature_cc(table[i].word), table[i].cc);
    }
    CHECK_NUMBER(dl_temperature_cc(0x07D1), DL_MISSING);
    CHECK_NUMBER(dl_temperature_cc(0xFC8F), DL_MISSING);
}

static void one_wire_checksum_has_its_catalogue_value(void) {
    CHECK_NUMBER(dl_crc8((const uint8_t *)"123456789", 9), 0xA1);
}

static void scratchpads_that_lie_are_missing(void) {
    uint8_t good[9] = {0x91, 0x01, 0x4B, 0x46, 0x7F, 0xFF, 0x0F, 0x10, 0};
    good[8] = dl_crc8(good, 8);
    CHECK_NUMBER(dl_scratchpad_cc(good), 2506);
    good[0] ^= 1;
    CHECK_NUMBER(dl_scratchpad_cc(good), DL_MISSING);
    uint8_t held[9] = {0};
    CHECK_NUMBER(dl_scratchpad_cc(held), DL_MISSING);
    uint8_t open_bus[9] = {0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF};
    CHECK_NUMBER(dl_scratchpad_cc(open_bus), DL_MISSING);
    uint8_t power_on[9] = {0x50, 0x05, 0x4B, 0x46, 0x7F, 0xFF, 0x0C, 0x10, 0};
    power_on[8] = dl_crc8(power_on, 8);
    CHECK_NUMBER(dl_scratchpad_cc(power_on), DL_MISSING);
}

static void fill(dl_window *window, const int32_t *counts, size_t count) {
    dl_window_clear(window);
    for (size_t i = 0; i < count; i++) {
        dl_window_add(window, counts[i]);
    }
}

/* 10 readings from 95 to 113 in steps of 2: mean 104, variance 330 / 9 = 36.7. */
static void mean_and_deviation_as_worked_by_hand(void) {
    const int32_t counts[] = {95, 97, 99, 101, 103, 105, 107, 109, 111, 113};
    dl_window window;
    fill(&window, counts, 10);
    dl_weight weight = dl_window_weigh(&window, (dl_calibration){0, 0});
    CHECK_NUMBER(weight.mean_counts, 104);
    CHECK_NUMBER(weight.sd_counts, 6);
    CHECK_NUMBER(weight.weight_g, DL_MISSING);
}

static void one_knock_does_not_move_the_weight(void) {
    const int32_t counts[] = {500100, 500102, 500098, 500101, 500099, 500100, 500103, 500097, 900000, 500100};
    dl_window window;
    fill(&window, counts, 10);
    dl_weight weight = dl_window_weigh(&window, (dl_calibration){80000, 42000});
    CHECK_NUMBER(weight.rejected, 1);
    CHECK_NUMBER(weight.mean_counts, 500100);
    CHECK_NUMBER(weight.weight_g, 10002);
}

static void a_few_good_readings_are_no_weight(void) {
    const int32_t counts[] = {1, 2, 3, DL_MISSING, DL_MISSING, 4, 5, 6, 7};
    dl_window window;
    fill(&window, counts, 9);
    CHECK_NUMBER(window.dropped, 2);
    CHECK_NUMBER(dl_window_weigh(&window, (dl_calibration){0, 1000}).mean_counts, DL_MISSING);
}

static void extreme_readings_stay_within_range(void) {
    int32_t counts[DL_WEIGHING_WINDOW + 5];
    for (size_t i = 0; i < DL_WEIGHING_WINDOW + 5; i++) {
        counts[i] = i % 2 == 0 ? 8388606 : -8388607;
    }
    dl_window window;
    fill(&window, counts, DL_WEIGHING_WINDOW + 5);
    CHECK_NUMBER(window.dropped, 5);
    dl_weight weight = dl_window_weigh(&window, (dl_calibration){-8388607, 1});
    CHECK_NUMBER(weight.sd_counts, 8477377);
    CHECK_NUMBER(weight.weight_g, DL_MISSING);
}

static void two_known_weights_calibrate(void) {
    dl_calibration calibration;
    CHECK(dl_calibrate(&calibration, 81234, 0, 501234, 10000));
    CHECK_NUMBER(calibration.zero_counts, 81234);
    CHECK_NUMBER(calibration.counts_per_kg, 42000);
    CHECK(dl_calibrate(&calibration, -20000, 5000, -120000, 15000));
    CHECK_NUMBER(calibration.counts_per_kg, -10000);
    CHECK_NUMBER(calibration.zero_counts, 30000);
    CHECK(!dl_calibrate(&calibration, 100, 0, 900, 10000));
    CHECK(!dl_calibrate(&calibration, 100, 5000, 90000, 5000));
}

static void a_reversed_bridge_weighs_the_same(void) {
    const int32_t counts[] = {-70000, -70001, -69999, -70000, -70002, -69998, -70000, -70000};
    dl_window window;
    fill(&window, counts, 8);
    dl_weight weight = dl_window_weigh(&window, (dl_calibration){30000, -10000});
    CHECK_NUMBER(weight.weight_g, 10000);
    CHECK(weight.sd_g >= 0);
}

static void daylight_is_taken_out_and_glare_is_said(void) {
    dl_beam beam;
    dl_beam_start(&beam, 4095, 1000);
    CHECK(dl_beam_look(&beam, 1050, 50) == DL_BEAM_CLEAR);
    CHECK(dl_beam_look(&beam, 3100, 2100) == DL_BEAM_CLEAR);
    CHECK(dl_beam_look(&beam, 2150, 2100) == DL_BEAM_BROKEN);
    CHECK(dl_beam_look(&beam, 4095, 3900) == DL_BEAM_DAZZLED);
}

static void slow_dirt_is_followed_and_said(void) {
    dl_beam beam;
    dl_beam_start(&beam, 4095, 1000);
    for (int level = 1000; level >= 300; level--) {
        for (int look = 0; look < 3000; look++) {
            CHECK(dl_beam_look(&beam, level, 0) == DL_BEAM_CLEAR);
        }
    }
    CHECK(dl_beam_dirty(&beam));
    CHECK(dl_beam_look(&beam, 20, 0) == DL_BEAM_BROKEN);
}

static void a_lane_whose_lamp_is_the_wrong_way_round_is_said(void) {
    dl_beam beam;
    dl_beam_start(&beam, 4095, 3);
    CHECK(dl_beam_look(&beam, 52, 50) == DL_BEAM_CLEAR);
    CHECK(dl_beam_dirty(&beam));
    dl_beam_start(&beam, 4095, 300);
    CHECK(!dl_beam_dirty(&beam));
}

const test_case sensor_tests[] = {TEST(converter_words_are_twos_complement),
                                  TEST(saturated_and_cut_lines_are_missing_never_zero),
                                  TEST(thermometer_words_follow_the_data_sheet),
                                  TEST(one_wire_checksum_has_its_catalogue_value),
                                  TEST(scratchpads_that_lie_are_missing),
                                  TEST(mean_and_deviation_as_worked_by_hand),
                                  TEST(one_knock_does_not_move_the_weight),
                                  TEST(a_few_good_readings_are_no_weight),
                                  TEST(extreme_readings_stay_within_range),
                                  TEST(two_known_weights_calibrate),
                                  TEST(a_reversed_bridge_weighs_the_same),
                                  TEST(daylight_is_taken_out_and_glare_is_said),
                                  TEST(slow_dirt_is_followed_and_said),
                                  TEST(a_lane_whose_lamp_is_the_wrong_way_round_is_said),
                                  {NULL, NULL}};
