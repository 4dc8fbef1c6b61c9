/* The node on the worked board: looks at the lanes, sleeps, weighs, sends. */
#include "beam.h"
#include "board.h"
#include "frame.h"
#include "node.h"
#include "node_config.h"
#include "thermometer.h"

#define LOOK_BUSY_MS 2u
#define LOOK_QUIET_MS 20u
/* Looks go on at the busy pace this long after the last bee. */
#define BUSY_FOR_MS 1000u
#define SCALE_READINGS 24u
/* After the word that a pack has been taken, settings may follow this long; and this long after a report, which gets no
 * such word. */
#define SETTINGS_WITHIN_MS (NODE_RADIO_ANSWER_MS / 8u)
#define REPORT_ANSWER_WITHIN_MS (NODE_RADIO_ANSWER_MS / 4u)
#define PACK_BYTES 900u

static dl_node node;
static dl_storage storage;
static dl_beam beams[DL_LANES_MAX][2];
static dl_frame_reader incoming;
static uint64_t busy_until_ms;
static uint8_t pack_number;

static void name_node(dl_identity *identity) {
    static const char digits[] = "0123456789abcdef";
    static const char begin[] = "urn:dev:mac:02a1c0fffe";
    size_t at = 0;
    for (; begin[at] != '\0'; at++) {
        identity->base_name[at] = begin[at];
    }
    uint32_t unique = board_unique();
    for (int shift = 20; shift >= 0; shift -= 4) {
        identity->base_name[at] = digits[unique >> shift & 15u];
        at++;
    }
    identity->base_name[at] = ':';
}

/* The lanes are clear when the board starts: somebody has just looked into them. */
static void commission_beams(void) {
    for (uint32_t lane = 0; lane < node.identity.lanes; lane++) {
        board_light light = board_look_at_lane(lane);
        dl_beam_start(&beams[lane][0], 4095, light.outer_lit - light.outer_dark);
        dl_beam_start(&beams[lane][1], 4095, light.inner_lit - light.inner_dark);
    }
}

static void look_at_lanes(uint64_t now_ms) {
    for (uint32_t lane = 0; lane < node.identity.lanes; lane++) {
        board_light light = board_look_at_lane(lane);
        dl_beam_view outer = dl_beam_look(&beams[lane][0], light.outer_lit, light.outer_dark);
        dl_beam_view inner = dl_beam_look(&beams[lane][1], light.inner_lit, light.inner_dark);
        bool dazzled = outer == DL_BEAM_DAZZLED || inner == DL_BEAM_DAZZLED;
        dl_node_lane_ails(&node, lane, dazzled || dl_beam_dirty(&beams[lane][0]) || dl_beam_dirty(&beams[lane][1]));
        if (dazzled) {
            continue; /* sun in the lane: say nothing rather than count light */
        }
        if (dl_node_look(&node, lane, outer == DL_BEAM_BROKEN, inner == DL_BEAM_BROKEN, now_ms)) {
            busy_until_ms = now_ms + BUSY_FOR_MS;
        }
    }
}

/* Anything that takes time goes on looking at the lanes meanwhile. */
static void pass_ms(uint32_t ms) {
    uint64_t until_ms = board_now_ms() + ms;
    do {
        uint64_t now_ms = board_now_ms();
        board_alive();
        look_at_lanes(now_ms);
        uint32_t pace_ms = now_ms < busy_until_ms ? LOOK_BUSY_MS : LOOK_QUIET_MS;
        board_sleep_ms(ms < pace_ms ? ms : pace_ms);
    } while (board_now_ms() < until_ms);
}

static void weigh(void) {
    if (NODE_SCALE == 0) {
        return;
    }
    board_scale_on();
    pass_ms(400);
    for (uint32_t i = 0; i < SCALE_READINGS; i++) {
        for (int waited = 0; !board_scale_ready() && waited < 300; waited += 2) {
            pass_ms(2);
        }
        /* Without an answer the word is 0, which the core knows as missing. */
        dl_node_weigh(&node, board_scale_ready() ? board_scale_read() : 0);
    }
    board_scale_off();
}

static dl_readings read_slow_things(void) {
    board_thermometer_convert(0);
    board_thermometer_convert(1);
    pass_ms(760);
    uint8_t cell[DL_SCRATCHPAD_BYTES];
    uint8_t box[DL_SCRATCHPAD_BYTES];
    board_thermometer_read(0, cell);
    board_thermometer_read(1, box);
    int32_t battery_mv = board_battery_code() * NODE_BATTERY_FULL_SCALE_MV / 4095;
    return (dl_readings){dl_scratchpad_cc(cell), dl_scratchpad_cc(box), battery_mv};
}

static void write_frame(dl_frame_kind kind, uint8_t number, const uint8_t *payload, size_t count) {
    static uint8_t frame[DL_FRAME_BYTES_MAX];
    board_carrier_write(frame, dl_frame_write((uint8_t)kind, number, payload, count, frame, sizeof frame));
}

static void take_settings(bool live) {
    static char reply[DL_ACKNOWLEDGEMENT_BYTES];
    size_t length = dl_node_settings(&node, (const char *)incoming.payload, incoming.count, live, board_now_ms(), reply,
                                     sizeof reply);
    if (length > 0) {
        write_frame(DL_FRAME_ACKNOWLEDGEMENT, 0, (const uint8_t *)reply, length);
    }
}

/* Returns true when the frame says that the pack on its way was taken. */
static bool take_frame(void) {
    switch (incoming.kind) {
    case DL_FRAME_TAKEN:
        return incoming.number == pack_number;
    case DL_FRAME_SETTINGS_LIVE:
        take_settings(true);
        return false;
    case DL_FRAME_SETTINGS_STORED:
        take_settings(false);
        return false;
    case DL_FRAME_TIME:
        if (incoming.count == 4) {
            dl_node_set_clock(&node, dl_get32(incoming.payload), board_now_ms());
        }
        return false;
    default:
        return false;
    }
}

static bool hear(uint32_t for_ms, bool until_taken) {
    bool taken = false;
    uint64_t until_ms = board_now_ms() + for_ms;
    while (board_now_ms() < until_ms && !(taken && until_taken)) {
        int byte = board_carrier_read();
        if (byte >= 0) {
            taken = (dl_frame_take(&incoming, (uint8_t)byte) && take_frame()) || taken;
        } else {
            board_alive();
            look_at_lanes(board_now_ms());
        }
    }
    return taken;
}

/* What is written before the radio has started is lost. */
static void wake_radio(void) {
    board_carrier_on();
    if (NODE_RADIO_START_MS > 0) {
        pass_ms(NODE_RADIO_START_MS);
    }
}

static void send_waiting(void) {
    static uint8_t pack[PACK_BYTES];
    wake_radio();
    dl_frame_begin(&incoming);
    size_t length = dl_node_pack(&node, pack, sizeof pack, board_now_ms());
    while (length > 0) {
        pack_number++;
        write_frame(DL_FRAME_READINGS, pack_number, pack, length);
        if (!hear(NODE_RADIO_ANSWER_MS, true)) {
            break;
        }
        dl_node_pack_taken(&node);
        length = dl_node_pack(&node, pack, sizeof pack, board_now_ms());
    }
    (void)hear(SETTINGS_WITHIN_MS, false);
    board_carrier_off();
}

static void report(void) {
    static char reply[DL_ACKNOWLEDGEMENT_BYTES];
    wake_radio();
    size_t length = dl_node_report(&node, board_now_ms(), reply, sizeof reply);
    write_frame(DL_FRAME_ACKNOWLEDGEMENT, 0, (const uint8_t *)reply, length);
    (void)hear(REPORT_ANSWER_WITHIN_MS, false);
    board_carrier_off();
}

int main(void) {
    board_start();
    storage = board_storage();
    dl_identity identity = {.format = NODE_FORMAT,
                            .lanes = NODE_LANES,
                            .battery_low_mv = NODE_BATTERY_LOW_MV,
                            .battery_recovered_mv = NODE_BATTERY_RECOVERED_MV,
                            .calibration = {NODE_ZERO_COUNTS, NODE_COUNTS_PER_KG}};
    name_node(&identity);
    dl_node_start(&node, &identity, &storage);
    commission_beams();
    look_at_lanes(board_now_ms());
    report();
    for (;;) {
        uint32_t due_s = dl_node_due_in_s(&node, board_now_ms());
        if (due_s > 0) {
            pass_ms(due_s < 60 ? due_s * 1000u : 60000u);
            continue;
        }
        weigh();
        dl_readings readings = read_slow_things();
        bool taring = node.tare_wanted;
        dl_sample taken;
        if (dl_node_sample(&node, &readings, board_now_ms(), &taken)) {
            send_waiting();
        }
        if (taring && !node.tare_wanted) {
            report();
        }
    }
}
