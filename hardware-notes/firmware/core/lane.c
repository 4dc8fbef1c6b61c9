#include "lane.h"

/* A crowd that never leaves the lane clear must not wind the position up for ever. */
#define POSITION_LIMIT 100

/* Runs before a lane's share of undecided ones says anything. */
#define RUNS_TO_JUDGE 40u

void dl_lane_start(dl_lane *lane, uint32_t hold_off_ms) {
    *lane = (dl_lane){0};
    lane->hold_off_ms = hold_off_ms;
}

static void settle(dl_beam_edge *edge, bool broken, uint64_t now_ms) {
    if (broken != edge->raw) {
        edge->raw = broken;
        edge->raw_since_ms = now_ms;
    }
    if (edge->raw != edge->steady && now_ms - edge->raw_since_ms >= DL_LANE_DEBOUNCE_MS) {
        edge->steady = edge->raw;
    }
}

static uint8_t phase_of(bool outer, bool inner) {
    if (outer) {
        return inner ? 2 : 1;
    }
    return inner ? 3 : 0;
}

static void count(dl_lane *lane, uint32_t *counter, uint32_t bees, uint64_t now_ms) {
    if (lane->has_counted && now_ms - lane->last_count_ms < lane->hold_off_ms) {
        return;
    }
    lane->has_counted = true;
    lane->last_count_ms = now_ms;
    *counter += bees;
}

static void finish_run(dl_lane *lane, uint64_t now_ms) {
    if (lane->position >= 4) {
        count(lane, &lane->in, lane->inward_passes > 0 ? lane->inward_passes : 1u, now_ms);
    } else if (lane->position <= -4) {
        count(lane, &lane->out, lane->outward_passes > 0 ? lane->outward_passes : 1u, now_ms);
    } else if (lane->position == 0 && !lane->leaped) {
        lane->turned_back++;
    } else {
        lane->undecided++;
    }
    lane->position = 0;
    lane->heading = 0;
    lane->leaped = false;
    lane->far_side = 0;
    lane->inward_passes = 0;
    lane->outward_passes = 0;
}

/* A bee is longer than the beams are apart. So when the tail has left the outer
 * beam and afterwards the outer beam alone is broken again, either that bee went
 * back by more than its own length or the next one is on its heels. In a run that
 * ends inside, each further way from outer to inner is the next bee. */
static void note_side(dl_lane *lane, uint8_t phase) {
    if (phase != 1 && phase != 3) {
        return;
    }
    int8_t side = phase == 1 ? -1 : 1;
    if (lane->far_side == -1 && side == 1 && lane->inward_passes < UINT8_MAX) {
        lane->inward_passes++;
    } else if (lane->far_side == 1 && side == -1 && lane->outward_passes < UINT8_MAX) {
        lane->outward_passes++;
    }
    lane->far_side = side;
}

static void step(dl_lane *lane, uint8_t phase, uint64_t now_ms) {
    uint8_t forward = (uint8_t)((phase - lane->phase) & 3);
    if (lane->phase == 0) {
        lane->run_since_ms = now_ms;
    }
    lane->phase = phase;
    if (forward == 2) {
        /* Both beams changed between two looks: half a turn in the known heading. */
        if (lane->heading == 0) {
            lane->leaped = true;
        } else {
            lane->position = (int8_t)(lane->position + 2 * lane->heading);
        }
    } else {
        lane->heading = forward == 1 ? 1 : -1;
        if (lane->leaped) {
            lane->position = (int8_t)(lane->position + 2 * lane->heading);
            lane->leaped = false;
        }
        lane->position = (int8_t)(lane->position + lane->heading);
    }
    if (lane->position > POSITION_LIMIT || lane->position < -POSITION_LIMIT) {
        lane->position = (int8_t)(lane->position % 4);
    }
    if (phase == 0) {
        finish_run(lane, now_ms);
    } else {
        note_side(lane, phase);
    }
}

bool dl_lane_look(dl_lane *lane, bool outer_broken, bool inner_broken, uint64_t now_ms) {
    settle(&lane->outer, outer_broken, now_ms);
    settle(&lane->inner, inner_broken, now_ms);
    uint8_t phase = phase_of(lane->outer.steady, lane->inner.steady);
    if (phase != lane->phase) {
        step(lane, phase, now_ms);
    }
    return phase != 0 || outer_broken || inner_broken;
}

dl_lane_health dl_lane_judge(const dl_lane *lane, uint64_t now_ms) {
    if (lane->phase != 0 && now_ms - lane->run_since_ms >= DL_LANE_BLOCKED_MS) {
        return DL_LANE_BLOCKED;
    }
    uint32_t decided = lane->in + lane->out;
    if (lane->undecided >= RUNS_TO_JUDGE && lane->undecided > decided) {
        return DL_LANE_FLICKERING;
    }
    return DL_LANE_WELL;
}
