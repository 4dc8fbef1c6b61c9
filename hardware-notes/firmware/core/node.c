#include "node.h"

/* A tare while the box swings is a wrong zero for weeks. */
#define TARE_SD_MAX_G 50
/* Relative times must stay below 2^28 seconds to be read as such (RFC 8428 4.5.3). */
#define AGE_MAX_S 0x0FFFFFFFu

static uint32_t elapsed_s(const dl_node *node, uint64_t now_ms) {
    return node->elapsed_before_s + (uint32_t)(now_ms / 1000u);
}

void dl_node_start(dl_node *node, const dl_identity *identity, const dl_storage *storage) {
    *node = (dl_node){.identity = *identity, .storage = storage};
    node->battery = (dl_battery){identity->battery_low_mv, identity->battery_recovered_mv, false};
    node->schedule.last_weight_g = DL_MISSING;
    node->kept = dl_keep_read(storage);
    node->kept.boot++;
    if (node->kept.counts_per_kg != identity->calibration.counts_per_kg) {
        node->kept.counts_per_kg = identity->calibration.counts_per_kg;
        node->kept.zero_counts = identity->calibration.zero_counts;
    }
    (void)dl_keep_write(storage, &node->kept);
    dl_backlog_open(&node->backlog, storage, DL_KEEP_BYTES);
    dl_sample newest;
    if (dl_backlog_newest(&node->backlog, &newest)) {
        node->elapsed_before_s = newest.elapsed_s + 1;
    }
    node->first_serial = node->backlog.newest + 1;
    for (uint32_t lane = 0; lane < DL_LANES_MAX; lane++) {
        dl_lane_start(&node->lanes[lane], 0);
    }
}

void dl_node_set_clock(dl_node *node, uint32_t unix_s, uint64_t now_ms) {
    if (unix_s < DL_UNIX_EARLIEST || unix_s > DL_UNIX_LATEST) {
        return;
    }
    node->clock_set = true;
    node->clock_unix_s = unix_s;
    node->clock_elapsed_s = elapsed_s(node, now_ms);
}

uint32_t dl_node_clock(const dl_node *node, uint64_t now_ms) {
    return node->clock_set ? node->clock_unix_s + (elapsed_s(node, now_ms) - node->clock_elapsed_s) : 0;
}

bool dl_node_look(dl_node *node, uint32_t lane, bool outer_broken, bool inner_broken, uint64_t now_ms) {
    return lane < node->identity.lanes && lane < DL_LANES_MAX &&
           dl_lane_look(&node->lanes[lane], outer_broken, inner_broken, now_ms);
}

void dl_node_lane_ails(dl_node *node, uint32_t lane, bool ails) {
    if (lane < DL_LANES_MAX) {
        node->lane_ails[lane] = ails;
    }
}

uint32_t dl_node_due_in_s(const dl_node *node, uint64_t now_ms) {
    return dl_schedule_due_in(&node->schedule, &node->kept, &node->battery, elapsed_s(node, now_ms));
}

void dl_node_weigh(dl_node *node, uint32_t converter_word) {
    dl_window_add(&node->window, dl_converter_counts(converter_word));
}

static void count_bees(const dl_node *node, dl_sample *sample) {
    sample->counted = node->identity.lanes > 0;
    for (uint32_t lane = 0; lane < node->identity.lanes && lane < DL_LANES_MAX; lane++) {
        sample->in += node->lanes[lane].in;
        sample->out += node->lanes[lane].out;
    }
}

static bool steady(const dl_node *node, const dl_weight *weight) {
    if (weight->mean_counts == DL_MISSING) {
        return false;
    }
    return node->kept.counts_per_kg == 0 || weight->sd_g <= TARE_SD_MAX_G;
}

static void tare(dl_node *node, dl_weight *weight) {
    node->kept.zero_counts = weight->mean_counts;
    node->kept.tare = node->tare_number;
    node->tare_wanted = false;
    if (node->kept.counts_per_kg != 0) {
        weight->weight_g = 0;
    }
    (void)dl_keep_write(node->storage, &node->kept);
}

bool dl_node_sample(dl_node *node, const dl_readings *readings, uint64_t now_ms, dl_sample *taken) {
    dl_calibration calibration = {node->kept.zero_counts, node->kept.counts_per_kg};
    dl_weight weight = dl_window_weigh(&node->window, calibration);
    dl_window_clear(&node->window);
    if (node->tare_wanted && steady(node, &weight)) {
        tare(node, &weight);
    }
    dl_sample sample = {.elapsed_s = elapsed_s(node, now_ms),
                        .unix_s = dl_node_clock(node, now_ms),
                        .boot = node->kept.boot,
                        .weight_g = weight.weight_g,
                        .weight_sd_g = weight.weight_g == DL_MISSING ? DL_MISSING : weight.sd_g,
                        .load_counts = weight.weight_g == DL_MISSING ? weight.mean_counts : DL_MISSING,
                        .cell_cc = readings->cell_cc,
                        .box_cc = readings->box_cc,
                        .battery_mv = readings->battery_mv};
    count_bees(node, &sample);
    dl_battery_note(&node->battery, readings->battery_mv);
    (void)dl_backlog_add(&node->backlog, &sample);
    *taken = sample;
    return dl_schedule_note(&node->schedule, &node->kept, &sample);
}

/* A sample taken before the clock was set gets its time from the seconds under
 * power since; time without power between two runs is not known to a board
 * without a clock and counts as none. */
static dl_time time_of(const dl_node *node, const dl_sample *sample, uint64_t now_ms) {
    if (sample->unix_s != 0) {
        return (dl_time){.absolute = true, .unix_s = sample->unix_s};
    }
    uint32_t now_s = elapsed_s(node, now_ms);
    uint32_t age_s = now_s > sample->elapsed_s ? now_s - sample->elapsed_s : 0;
    if (node->clock_set) {
        return (dl_time){.absolute = true, .unix_s = dl_node_clock(node, now_ms) - age_s};
    }
    return (dl_time){.age_s = age_s < AGE_MAX_S ? age_s : AGE_MAX_S};
}

size_t dl_node_pack(dl_node *node, uint8_t *bytes, size_t size, uint64_t now_ms) {
    dl_pack pack;
    dl_pack_begin(&pack, node->identity.format, bytes, size);
    uint32_t waiting = dl_backlog_waiting(&node->backlog);
    uint32_t boot = 0;
    uint32_t reaches = 0;
    for (uint32_t index = 0; index < waiting; index++) {
        dl_sample sample;
        uint32_t serial = dl_backlog_serial(&node->backlog, index);
        if (!dl_backlog_peek(&node->backlog, index, &sample)) {
            reaches = serial;
            continue;
        }
        bool first = pack.records == 0;
        if (!first && sample.boot != boot) {
            break;
        }
        /* The number of the pack belongs to this run; a pack of an earlier run's
         * samples carries none. */
        uint32_t seq = first && sample.boot == node->kept.boot ? node->seq + 1 : 0;
        if (!dl_pack_add(&pack, first ? node->identity.base_name : NULL, &sample, time_of(node, &sample, now_ms),
                         seq)) {
            break;
        }
        boot = sample.boot;
        reaches = serial;
    }
    size_t length = dl_pack_end(&pack);
    if (length == 0) {
        /* Nothing but torn slots: there is nobody to wait for. */
        dl_backlog_acknowledge(&node->backlog, reaches);
        return 0;
    }
    node->in_flight_up_to = reaches;
    if (boot == node->kept.boot) {
        node->seq++;
    }
    return length;
}

void dl_node_pack_taken(dl_node *node) {
    dl_backlog_acknowledge(&node->backlog, node->in_flight_up_to);
    node->in_flight_up_to = 0;
}

uint32_t dl_node_faulty_lanes(const dl_node *node, uint64_t now_ms) {
    uint32_t faulty = 0;
    for (uint32_t lane = 0; lane < node->identity.lanes && lane < DL_LANES_MAX; lane++) {
        if (node->lane_ails[lane] || dl_lane_judge(&node->lanes[lane], now_ms) != DL_LANE_WELL) {
            faulty++;
        }
    }
    return faulty;
}

static size_t report(const dl_node *node, const char *refused, uint64_t now_ms, char *bytes, size_t size) {
    dl_state_report state = {.base_name = node->identity.base_name,
                             .refused = refused,
                             .quick_now = dl_schedule_is_quick(&node->schedule, &node->kept, elapsed_s(node, now_ms)),
                             .lanes = node->identity.lanes,
                             .lanes_faulty = dl_node_faulty_lanes(node, now_ms),
                             .stored = dl_backlog_waiting(&node->backlog),
                             .unix_s = dl_node_clock(node, now_ms)};
    return dl_settings_acknowledge(&node->kept, &state, bytes, size);
}

size_t dl_node_report(const dl_node *node, uint64_t now_ms, char *bytes, size_t size) {
    return report(node, NULL, now_ms, bytes, size);
}

static bool same(const dl_kept *one, const dl_kept *other) {
    return one->revision == other->revision && one->period_s == other->period_s &&
           one->quick_period_s == other->quick_period_s && one->quick == other->quick &&
           one->tare_known == other->tare_known && one->tare == other->tare;
}

size_t dl_node_settings(dl_node *node, const char *payload, size_t count, bool live, uint64_t now_ms, char *bytes,
                        size_t size) {
    if (count == 0) {
        return 0;
    }
    dl_settings settings;
    const char *refused = dl_settings_read(&settings, &node->kept, payload, count);
    if (refused != NULL) {
        return report(node, refused, now_ms, bytes, size);
    }
    dl_kept before = node->kept;
    node->tare_wanted = dl_settings_apply(&settings, &node->kept);
    node->tare_number = settings.tare;
    if (!same(&before, &node->kept)) {
        (void)dl_keep_write(node->storage, &node->kept);
    }
    if (live && settings.has_time) {
        dl_node_set_clock(node, settings.unix_s, now_ms);
    }
    return report(node, NULL, now_ms, bytes, size);
}
