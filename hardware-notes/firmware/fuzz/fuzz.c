/* Everything that reads bytes from outside, under any bytes: settings, frames,
 * scratchpads, storage that was torn or belongs to something else, and beams that
 * break in any order. Built with libFuzzer where clang is at hand; otherwise
 * fuzz_driver.c supplies a bounded stream of mutations. */
#include "frame.h"
#include "memory.h"
#include "node.h"
#include "thermometer.h"

#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool condition) {
    if (!condition) {
        abort();
    }
}

static void fuzz_settings(const uint8_t *data, size_t size) {
    static memory memory;
    memset(&memory, 0, sizeof memory);
    dl_storage storage = memory_storage(&memory, MEMORY_BYTES);
    dl_identity identity = {.base_name = "n:", .lanes = 2};
    dl_node node;
    dl_node_start(&node, &identity, &storage);
    char reply[DL_ACKNOWLEDGEMENT_BYTES];
    size_t length = dl_node_settings(&node, (const char *)data, size, (size & 1) != 0, 1000, reply, sizeof reply);
    must(size == 0 || (length > 2 && reply[0] == '[' && reply[length - 1] == ']'));
    must(node.kept.period_s >= 10 && node.kept.period_s <= 3600);
    must(node.kept.quick_period_s >= 5 && node.kept.quick_period_s <= node.kept.period_s);
}

static void fuzz_frames(const uint8_t *data, size_t size) {
    dl_frame_reader reader;
    dl_frame_begin(&reader);
    for (size_t i = 0; i < size; i++) {
        if (dl_frame_take(&reader, data[i])) {
            must(reader.count <= DL_FRAME_PAYLOAD_MAX);
        }
    }
    size_t count = size < DL_FRAME_PAYLOAD_MAX ? size : DL_FRAME_PAYLOAD_MAX;
    uint8_t frame[DL_FRAME_BYTES_MAX];
    size_t length = dl_frame_write(1, 2, data, count, frame, sizeof frame);
    must(length > 0);
    bool good = false;
    dl_frame_begin(&reader);
    for (size_t i = 0; i < length; i++) {
        good = dl_frame_take(&reader, frame[i]);
    }
    must(good && reader.count == count && memcmp(reader.payload, data, count) == 0);
}

static void fuzz_storage(const uint8_t *data, size_t size) {
    static memory memory;
    memset(&memory, 0xFF, sizeof memory);
    memory.writes_until_torn = 0;
    memory.dead = false;
    memcpy(memory.bytes, data, size < MEMORY_BYTES ? size : MEMORY_BYTES);
    dl_storage storage = memory_storage(&memory, MEMORY_BYTES);
    dl_identity identity = {.base_name = "n:", .lanes = 2, .format = (size & 1) != 0 ? DL_CBOR : DL_JSON};
    dl_node node;
    dl_node_start(&node, &identity, &storage);
    dl_readings readings = {2000, 2100, 3900};
    dl_sample taken;
    (void)dl_node_sample(&node, &readings, 1000, &taken);
    uint8_t pack[DL_PACK_BYTES_MIN];
    for (int i = 0; i < 4; i++) {
        must(dl_node_pack(&node, pack, sizeof pack, 2000) <= sizeof pack);
        dl_node_pack_taken(&node);
    }
}

static void fuzz_lane(const uint8_t *data, size_t size) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    uint64_t now = 0;
    for (size_t i = 0; i < size; i++) {
        (void)dl_lane_look(&lane, (data[i] & 1) != 0, (data[i] & 2) != 0, now);
        now += data[i] >> 2;
    }
    must(lane.in + lane.out + lane.turned_back + lane.undecided <= size * 2);
}

static void fuzz_sensors(const uint8_t *data, size_t size) {
    uint8_t scratchpad[DL_SCRATCHPAD_BYTES] = {0};
    memcpy(scratchpad, data, size < sizeof scratchpad ? size : sizeof scratchpad);
    int32_t cc = dl_scratchpad_cc(scratchpad);
    must(cc == DL_MISSING || (cc >= -5500 && cc <= 12500));
    dl_window window;
    dl_window_clear(&window);
    dl_calibration calibration = {0, 0};
    for (size_t i = 0; i + 4 <= size; i += 4) {
        uint32_t word = dl_get32(data + i);
        dl_window_add(&window, dl_converter_counts(word));
        calibration = (dl_calibration){(int32_t)(word << 8) / 256, (int32_t)word};
    }
    (void)dl_window_weigh(&window, calibration);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    if (size == 0) {
        return 0;
    }
    switch (data[0] % 5) {
    case 0:
        fuzz_settings(data + 1, size - 1);
        break;
    case 1:
        fuzz_frames(data + 1, size - 1);
        break;
    case 2:
        fuzz_storage(data + 1, size - 1);
        break;
    case 3:
        fuzz_lane(data + 1, size - 1);
        break;
    default:
        fuzz_sensors(data + 1, size - 1);
        break;
    }
    return 0;
}
