/* Check value of CRC-16/CCITT-FALSE for "123456789": 0x29B1 (recalled from memory). */
#include "backlog.h"
#include "check.h"
#include "frame.h"
#include "keep.h"
#include "memory.h"
#include "suites.h"

static dl_sample sample_at(uint32_t elapsed_s) {
    return (dl_sample){.elapsed_s = elapsed_s,
                       .boot = 1,
                       .counted = true,
                       .in = elapsed_s * 2,
                       .weight_g = 12345,
                       .weight_sd_g = 3,
                       .load_counts = DL_MISSING,
                       .cell_cc = 2150,
                       .box_cc = DL_MISSING,
                       .battery_mv = 3900};
}

static void the_checksum_has_its_catalogue_value(void) {
    CHECK_NUMBER(dl_crc16((const uint8_t *)"123456789", 9), 0x29B1);
}

static void a_fresh_board_starts_with_the_defaults(void) {
    memory memory = {0};
    memset(memory.bytes, 0xFF, sizeof memory.bytes);
    dl_storage storage = memory_storage(&memory, MEMORY_BYTES);
    dl_kept kept = dl_keep_read(&storage);
    CHECK_NUMBER(kept.boot, 0);
    CHECK_NUMBER(kept.period_s, 120);
    CHECK_NUMBER(kept.quick_period_s, 30);
    CHECK(!kept.tare_known);
}

static void what_is_kept_survives_a_restart(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, MEMORY_BYTES);
    dl_kept kept = dl_keep_read(&storage);
    kept.boot = 7;
    kept.zero_counts = -81234;
    kept.counts_per_kg = 42000;
    kept.quick = DL_QUICK_OFF;
    kept.tare_known = true;
    kept.tare = 3;
    CHECK(dl_keep_write(&storage, &kept));
    dl_kept again = dl_keep_read(&storage);
    CHECK_NUMBER(again.boot, 7);
    CHECK_NUMBER(again.zero_counts, -81234);
    CHECK_NUMBER(again.counts_per_kg, 42000);
    CHECK(again.quick == DL_QUICK_OFF && again.tare_known);
    CHECK_NUMBER(again.tare, 3);
}

static void power_lost_while_keeping_leaves_the_older_copy(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, MEMORY_BYTES);
    dl_kept kept = dl_keep_read(&storage);
    for (uint32_t boot = 1; boot <= 4; boot++) {
        kept.boot = boot;
        CHECK(dl_keep_write(&storage, &kept));
    }
    memory.writes_until_torn = 1;
    kept.boot = 5;
    CHECK(!dl_keep_write(&storage, &kept));
    CHECK_NUMBER(dl_keep_read(&storage).boot, 4);
}

static void samples_come_back_in_order_after_a_restart(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, DL_KEEP_BYTES + 20 * DL_BACKLOG_SLOT_BYTES);
    dl_backlog backlog;
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    for (uint32_t i = 1; i <= 7; i++) {
        dl_sample sample = sample_at(i * 100);
        CHECK(dl_backlog_add(&backlog, &sample));
    }
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 7);
    for (uint32_t i = 0; i < 7; i++) {
        dl_sample sample;
        CHECK(dl_backlog_peek(&backlog, i, &sample));
        CHECK_NUMBER(sample.elapsed_s, (i + 1) * 100);
        CHECK_NUMBER(sample.in, (i + 1) * 200);
        CHECK_NUMBER(sample.weight_g, 12345);
        CHECK_NUMBER(sample.box_cc, DL_MISSING);
    }
}

static void a_full_ring_gives_up_the_oldest(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, DL_KEEP_BYTES + 10 * DL_BACKLOG_SLOT_BYTES);
    dl_backlog backlog;
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    for (uint32_t i = 1; i <= 25; i++) {
        dl_sample sample = sample_at(i);
        CHECK(dl_backlog_add(&backlog, &sample));
    }
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 10);
    dl_sample oldest;
    CHECK(dl_backlog_peek(&backlog, 0, &oldest));
    CHECK_NUMBER(oldest.elapsed_s, 16);
}

static void acknowledged_samples_are_not_sent_again_beyond_the_last_write(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, DL_KEEP_BYTES + 10 * DL_BACKLOG_SLOT_BYTES);
    dl_backlog backlog;
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    for (uint32_t i = 1; i <= 5; i++) {
        dl_sample sample = sample_at(i);
        CHECK(dl_backlog_add(&backlog, &sample));
    }
    dl_backlog_acknowledge(&backlog, 4);
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 1);
    dl_backlog_acknowledge(&backlog, 99);
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 1);
    dl_sample sixth = sample_at(6);
    CHECK(dl_backlog_add(&backlog, &sixth));
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 2);
}

/* Against a plain model: whatever the moment of the power failure, all samples
 * whose write had succeeded come back, bar the one slot that was being overwritten. */
static void power_lost_at_any_write_loses_at_most_the_slot_being_written(void) {
    for (uint32_t torn = 1; torn <= 30; torn++) {
        memory memory = {0};
        memory.writes_until_torn = torn;
        dl_storage storage = memory_storage(&memory, DL_KEEP_BYTES + 10 * DL_BACKLOG_SLOT_BYTES);
        dl_backlog backlog;
        dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
        uint32_t stored = 0;
        for (uint32_t i = 1; i <= 30; i++) {
            dl_sample sample = sample_at(i);
            stored += dl_backlog_add(&backlog, &sample) ? 1 : 0;
        }
        CHECK_NUMBER(stored, torn - 1);
        memory.dead = false;
        memory.writes_until_torn = 0;
        dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
        uint32_t readable = 0;
        for (uint32_t i = 0; i < dl_backlog_waiting(&backlog); i++) {
            dl_sample sample;
            readable += dl_backlog_peek(&backlog, i, &sample) ? 1 : 0;
        }
        CHECK_NUMBER(readable, stored < 10 ? stored : 9);
        CHECK_NUMBER(backlog.newest, stored);
    }
}

static void no_storage_at_all_is_survived(void) {
    memory memory = {0};
    dl_storage storage = memory_storage(&memory, DL_KEEP_BYTES);
    dl_backlog backlog;
    dl_backlog_open(&backlog, &storage, DL_KEEP_BYTES);
    dl_sample sample = sample_at(1);
    CHECK(!dl_backlog_add(&backlog, &sample));
    CHECK_NUMBER(dl_backlog_waiting(&backlog), 0);
}

/* Cheshire and Baker's stuffing of 254 bytes without a zero and of zeros alone,
 * worked by hand on the frame's own head. */
static void frames_carry_any_bytes_and_end_with_the_only_zero(void) {
    uint8_t payload[DL_FRAME_PAYLOAD_MAX];
    for (size_t i = 0; i < sizeof payload; i++) {
        payload[i] = (uint8_t)(i % 300 < 280 ? 0x55 : 0);
    }
    const size_t counts[] = {0, 1, 3, 250, 251, 252, 253, 254, 255, 256, 509, DL_FRAME_PAYLOAD_MAX};
    for (size_t i = 0; i < sizeof counts / sizeof counts[0]; i++) {
        uint8_t frame[DL_FRAME_BYTES_MAX];
        size_t length = dl_frame_write(DL_FRAME_READINGS, 9, payload, counts[i], frame, sizeof frame);
        CHECK(length > 0);
        CHECK_NUMBER(frame[length - 1], 0);
        CHECK(memchr(frame, 0, length - 1) == NULL);
        dl_frame_reader reader;
        dl_frame_begin(&reader);
        bool good = false;
        for (size_t at = 0; at < length; at++) {
            good = dl_frame_take(&reader, frame[at]);
        }
        CHECK(good);
        CHECK_NUMBER(reader.kind, DL_FRAME_READINGS);
        CHECK_NUMBER(reader.number, 9);
        CHECK_NUMBER(reader.count, counts[i]);
        CHECK(memcmp(reader.payload, payload, counts[i]) == 0);
    }
    uint8_t small[20];
    CHECK_NUMBER(dl_frame_write(DL_FRAME_READINGS, 9, payload, 100, small, sizeof small), 0);
}

static void a_flipped_bit_spoils_its_frame_and_no_other(void) {
    uint8_t frame[DL_FRAME_BYTES_MAX];
    size_t length = dl_frame_write(DL_FRAME_TIME, 1, (const uint8_t *)"\1\2\3\4", 4, frame, sizeof frame);
    for (size_t bit = 0; bit < (length - 1) * 8; bit++) {
        dl_frame_reader reader;
        dl_frame_begin(&reader);
        frame[bit / 8] ^= (uint8_t)(1u << (bit % 8));
        bool accepted = false;
        for (size_t at = 0; at < length; at++) {
            accepted = dl_frame_take(&reader, frame[at]) || accepted;
        }
        frame[bit / 8] ^= (uint8_t)(1u << (bit % 8));
        CHECK(!accepted);
        bool good = false;
        for (size_t at = 0; at < length; at++) {
            good = dl_frame_take(&reader, frame[at]);
        }
        CHECK(good);
    }
}

const test_case storage_tests[] = {TEST(the_checksum_has_its_catalogue_value),
                                   TEST(a_fresh_board_starts_with_the_defaults),
                                   TEST(what_is_kept_survives_a_restart),
                                   TEST(power_lost_while_keeping_leaves_the_older_copy),
                                   TEST(samples_come_back_in_order_after_a_restart),
                                   TEST(a_full_ring_gives_up_the_oldest),
                                   TEST(acknowledged_samples_are_not_sent_again_beyond_the_last_write),
                                   TEST(power_lost_at_any_write_loses_at_most_the_slot_being_written),
                                   TEST(no_storage_at_all_is_survived),
                                   TEST(frames_carry_any_bytes_and_end_with_the_only_zero),
                                   TEST(a_flipped_bit_spoils_its_frame_and_no_other),
                                   {NULL, NULL}};
