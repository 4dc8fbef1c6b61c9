#include "check.h"
#include "memory.h"
#include "node.h"
#include "suites.h"

static const dl_readings SHADE = {2000, DL_MISSING, 3900};

typedef struct bench {
    memory memory;
    dl_storage storage;
    dl_node node;
} bench;

static dl_identity identity(void) {
    return (dl_identity){.base_name = "urn:dev:mac:02a1c0fffe000007:",
                         .format = DL_JSON,
                         .lanes = 1,
                         .battery_low_mv = 3400,
                         .battery_recovered_mv = 3600,
                         .calibration = {80000, 42000}};
}

static void power_up(bench *bench) {
    bench->storage = memory_storage(&bench->memory, MEMORY_BYTES);
    dl_identity who = identity();
    dl_node_start(&bench->node, &who, &bench->storage);
}

static bool sample(bench *bench, int32_t weight_g, uint64_t now_ms) {
    for (uint32_t i = 0; i < 16; i++) {
        int32_t counts = 80000 + weight_g * 42 + (i % 2 == 0 ? 3 : -3);
        dl_node_weigh(&bench->node, (uint32_t)counts & 0xFFFFFFu);
    }
    dl_sample taken;
    return dl_node_sample(&bench->node, &SHADE, now_ms, &taken);
}

static const char *pack(bench *bench, uint64_t now_ms) {
    static char text[4096];
    size_t length = dl_node_pack(&bench->node, (uint8_t *)text, sizeof text - 1, now_ms);
    text[length] = '\0';
    return text;
}

static unsigned occurrences(const char *text, const char *words) {
    unsigned count = 0;
    for (const char *at = strstr(text, words); at != NULL; at = strstr(at + 1, words)) {
        count++;
    }
    return count;
}

static void each_start_raises_the_boot_number(void) {
    bench bench = {0};
    power_up(&bench);
    CHECK_NUMBER(bench.node.kept.boot, 1);
    power_up(&bench);
    CHECK_NUMBER(bench.node.kept.boot, 2);
}

static void a_pack_stays_until_it_is_taken(void) {
    bench bench = {0};
    power_up(&bench);
    dl_node_set_clock(&bench.node, 1777888800, 0);
    CHECK(sample(&bench, 10000, 0));
    CHECK(occurrences(pack(&bench, 0), "\"v\":10}") == 1);
    CHECK(occurrences(pack(&bench, 5000), "\"bt\":1777888800,") == 1);
    dl_node_pack_taken(&bench.node);
    CHECK_TEXT(pack(&bench, 6000), strlen(pack(&bench, 6000)), "");
}

static void without_a_clock_times_are_ages(void) {
    bench bench = {0};
    power_up(&bench);
    (void)sample(&bench, 10000, 0);
    (void)sample(&bench, 10000, 120000);
    const char *text = pack(&bench, 130000);
    CHECK(occurrences(text, "\"bt\":-130,") == 1);
    CHECK(occurrences(text, "\"bt\":-10,") == 1);
}

static void a_clock_that_comes_late_dates_the_earlier_samples(void) {
    bench bench = {0};
    power_up(&bench);
    (void)sample(&bench, 10000, 0);
    dl_node_set_clock(&bench.node, 1777888800, 600000);
    CHECK(occurrences(pack(&bench, 660000), "\"bt\":1777888200,") == 1);
}

static void samples_of_an_earlier_run_go_out_first_and_apart(void) {
    bench bench = {0};
    power_up(&bench);
    (void)sample(&bench, 10000, 0);
    (void)sample(&bench, 10000, 120000);
    power_up(&bench);
    (void)sample(&bench, 11000, 10000);
    const char *earlier = pack(&bench, 10000);
    CHECK(occurrences(earlier, "{\"n\":\"boot\",\"u\":\"count\",\"v\":1}") == 2);
    CHECK(occurrences(earlier, "\"seq\"") == 0);
    CHECK(occurrences(earlier, "\"bt\":-131,") == 1);
    dl_node_pack_taken(&bench.node);
    const char *own = pack(&bench, 10000);
    CHECK(occurrences(own, "{\"n\":\"boot\",\"u\":\"count\",\"v\":2}") == 1);
    CHECK(occurrences(own, "{\"n\":\"seq\",\"u\":\"count\",\"v\":1}") == 1);
}

static void two_days_out_of_reach_come_in_order(void) {
    bench bench = {0};
    power_up(&bench);
    dl_node_set_clock(&bench.node, 1777888800, 0);
    for (uint32_t i = 0; i < 100; i++) {
        (void)sample(&bench, 10000 + (int32_t)i, (uint64_t)i * 120000u);
    }
    uint32_t received = 0;
    for (int rounds = 0; rounds < 100 && dl_backlog_waiting(&bench.node.backlog) > 0; rounds++) {
        const char *text = pack(&bench, 12000000);
        char expected[40];
        (void)snprintf(expected, sizeof expected, "\"bt\":%u,", 1777888800u + received * 120u);
        CHECK(occurrences(text, expected) == 1);
        received += occurrences(text, "\"bt\":");
        dl_node_pack_taken(&bench.node);
    }
    CHECK_NUMBER(received, 100);
}

static void bees_are_counted_from_zero_after_a_start(void) {
    bench bench = {0};
    power_up(&bench);
    const bool outer[] = {false, true, true, false, false};
    const bool inner[] = {false, false, true, true, false};
    for (uint64_t i = 0; i < 5; i++) {
        (void)dl_node_look(&bench.node, 0, outer[i], inner[i], i * 20);
        (void)dl_node_look(&bench.node, 0, outer[i], inner[i], i * 20 + 10);
    }
    CHECK(!dl_node_look(&bench.node, 5, true, true, 200));
    (void)sample(&bench, 10000, 1000);
    CHECK(occurrences(pack(&bench, 1000), "\"n\":\"in\",\"u\":\"count\",\"v\":1}") == 1);
    power_up(&bench);
    (void)sample(&bench, 10000, 1000);
    dl_node_pack_taken(&bench.node);
    (void)pack(&bench, 1000);
    dl_node_pack_taken(&bench.node);
    CHECK(occurrences(pack(&bench, 1000), "\"n\":\"in\",\"u\":\"count\",\"v\":0}") == 1);
}

static const char *tell(bench *bench, const char *settings, bool live, uint64_t now_ms) {
    static char reply[DL_ACKNOWLEDGEMENT_BYTES + 1];
    size_t length =
        dl_node_settings(&bench->node, settings, strlen(settings), live, now_ms, reply, DL_ACKNOWLEDGEMENT_BYTES);
    reply[length] = '\0';
    return reply;
}

static void settings_survive_a_restart_and_are_acknowledged(void) {
    bench bench = {0};
    power_up(&bench);
    const char *reply = tell(&bench, "[{\"n\":\"rev\",\"v\":3},{\"n\":\"period\",\"v\":300}]", true, 0);
    CHECK(occurrences(reply, "\"n\":\"rev\",\"u\":\"count\",\"v\":3}") == 1);
    CHECK(occurrences(reply, "\"refused\"") == 0);
    power_up(&bench);
    CHECK_NUMBER(bench.node.kept.period_s, 300);
    (void)sample(&bench, 10000, 0);
    CHECK_NUMBER(dl_node_due_in_s(&bench.node, 0), 300);
}

static void refused_settings_change_nothing(void) {
    bench bench = {0};
    power_up(&bench);
    const char *reply =
        tell(&bench, "[{\"n\":\"rev\",\"v\":3},{\"n\":\"period\",\"v\":300},{\"n\":\"tare\",\"v\":-4}]", true, 0);
    CHECK(occurrences(reply, "{\"n\":\"refused\",\"vs\":\"tare\"}") == 1);
    CHECK_NUMBER(bench.node.kept.period_s, 120);
    CHECK_NUMBER(bench.node.kept.revision, 0);
}

static void an_old_time_from_the_brokers_store_is_not_believed(void) {
    bench bench = {0};
    power_up(&bench);
    const char *pack_with_time = "[{\"n\":\"rev\",\"v\":3},{\"n\":\"time\",\"v\":1777888800}]";
    CHECK(occurrences(tell(&bench, pack_with_time, false, 0), "\"clock\"") == 0);
    CHECK(occurrences(tell(&bench, pack_with_time, true, 0), "\"clock\",\"u\":\"s\",\"v\":1777888800}") == 1);
    CHECK_NUMBER(dl_node_clock(&bench.node, 61000), 1777888861);
}

static void a_tare_waits_for_a_steady_sample_and_happens_once(void) {
    bench bench = {0};
    power_up(&bench);
    (void)tell(&bench, "[{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}]", true, 0);
    const char *asked = "[{\"n\":\"rev\",\"v\":2},{\"n\":\"tare\",\"v\":1}]";
    CHECK(occurrences(tell(&bench, asked, true, 0), "\"tare\",\"u\":\"count\",\"v\":0}") == 1);
    for (uint32_t i = 0; i < 16; i++) {
        dl_node_weigh(&bench.node, 500000u + (i % 2) * 20000u);
    }
    dl_sample taken;
    (void)dl_node_sample(&bench.node, &SHADE, 1000, &taken);
    CHECK_NUMBER(bench.node.kept.tare, 0);
    (void)sample(&bench, 10000, 2000);
    CHECK_NUMBER(bench.node.kept.tare, 1);
    CHECK_NUMBER(bench.node.kept.zero_counts, 500000);
    power_up(&bench);
    (void)tell(&bench, asked, false, 0);
    (void)sample(&bench, 12000, 3000);
    CHECK_NUMBER(bench.node.kept.zero_counts, 500000);
}

static void an_empty_payload_is_passed_over(void) {
    bench bench = {0};
    power_up(&bench);
    CHECK_NUMBER(dl_node_settings(&bench.node, "", 0, true, 0, (char[8]){0}, 8), 0);
}

static void a_new_calibration_of_the_board_is_taken_over(void) {
    bench bench = {0};
    power_up(&bench);
    bench.node.kept.zero_counts = 1;
    (void)dl_keep_write(&bench.storage, &bench.node.kept);
    power_up(&bench);
    CHECK_NUMBER(bench.node.kept.zero_counts, 1);
    dl_identity who = identity();
    who.calibration = (dl_calibration){70000, 41000};
    dl_node_start(&bench.node, &who, &bench.storage);
    CHECK_NUMBER(bench.node.kept.zero_counts, 70000);
}

static void a_dirty_or_blocked_lane_is_reported_until_it_is_wiped(void) {
    bench bench = {0};
    power_up(&bench);
    CHECK_NUMBER(dl_node_faulty_lanes(&bench.node, 0), 0);
    dl_node_lane_ails(&bench.node, 0, true);
    dl_node_lane_ails(&bench.node, 99, true);
    CHECK_NUMBER(dl_node_faulty_lanes(&bench.node, 0), 1);
    dl_node_lane_ails(&bench.node, 0, false);
    CHECK_NUMBER(dl_node_faulty_lanes(&bench.node, 0), 0);
    (void)dl_node_look(&bench.node, 0, true, true, 1000);
    (void)dl_node_look(&bench.node, 0, true, true, 1010);
    CHECK_NUMBER(dl_node_faulty_lanes(&bench.node, 62000), 1);
    char reply[DL_ACKNOWLEDGEMENT_BYTES + 1] = "";
    reply[dl_node_report(&bench.node, 62000, reply, DL_ACKNOWLEDGEMENT_BYTES)] = '\0';
    CHECK(occurrences(reply, "\"lanes-faulty\",\"u\":\"count\",\"v\":1}") == 1);
}

const test_case node_tests[] = {TEST(each_start_raises_the_boot_number),
                                TEST(a_pack_stays_until_it_is_taken),
                                TEST(without_a_clock_times_are_ages),
                                TEST(a_clock_that_comes_late_dates_the_earlier_samples),
                                TEST(samples_of_an_earlier_run_go_out_first_and_apart),
                                TEST(two_days_out_of_reach_come_in_order),
                                TEST(bees_are_counted_from_zero_after_a_start),
                                TEST(settings_survive_a_restart_and_are_acknowledged),
                                TEST(refused_settings_change_nothing),
                                TEST(an_old_time_from_the_brokers_store_is_not_believed),
                                TEST(a_tare_waits_for_a_steady_sample_and_happens_once),
                                TEST(an_empty_payload_is_passed_over),
                                TEST(a_dirty_or_blocked_lane_is_reported_until_it_is_wiped),
                                TEST(a_new_calibration_of_the_board_is_taken_over),
                                {NULL, NULL}};
