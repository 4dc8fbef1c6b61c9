#include "entrance.h"

#include <math.h>
#include <string.h>

#define FIRST_BEAM_MM 10.0
#define LANE_BEYOND_MM 10.0
#define ANTENNAE_MM 2.0

entrance_habits entrance_usual_habits(void) {
    return (entrance_habits){.beam_spacing_mm = 4.0,
                             .length_mm = 13.0,
                             .speed_mm_s = 80.0,
                             .gap_mm = 2.0,
                             .gap_sd_mm = 3.0,
                             .turns_back = 0.05,
                             .single_file = true};
}

entrance entrance_open(int lanes, entrance_habits habits, uint64_t seed) {
    entrance entrance;
    memset(&entrance, 0, sizeof entrance);
    entrance.habits = habits;
    entrance.lane_count = lanes;
    entrance.chance = chance_from(seed);
    return entrance;
}

static double lane_length(const entrance *entrance) {
    return FIRST_BEAM_MM + entrance->habits.beam_spacing_mm + LANE_BEYOND_MM;
}

void entrance_arrive(entrance *entrance, bool inward) {
    int lane = (int)(chance_share(&entrance->chance) * entrance->lane_count);
    if (inward) {
        entrance->lanes[lane].waiting_in++;
    } else {
        entrance->lanes[lane].waiting_out++;
    }
}

static entrance_bee new_bee(entrance *entrance, bool inward) {
    const entrance_habits *habits = &entrance->habits;
    entrance_bee bee = {.inward = inward, .turns_at_mm = 1e9};
    bee.length_mm = habits->length_mm * (1.0 + 0.06 * chance_normal(&entrance->chance));
    bee.speed_mm_s = habits->speed_mm_s * exp(0.3 * chance_normal(&entrance->chance));
    bee.gap_mm = habits->gap_mm + habits->gap_sd_mm * chance_normal(&entrance->chance);
    if (bee.gap_mm < -bee.length_mm / 2) {
        bee.gap_mm = -bee.length_mm / 2;
    }
    if (chance_share(&entrance->chance) < habits->turns_back) {
        /* At the latest while the tail is still short of the second beam. */
        double latest_mm = FIRST_BEAM_MM + habits->beam_spacing_mm + bee.length_mm - 1.0;
        bee.turns_at_mm = 5.0 + chance_share(&entrance->chance) * (latest_mm - 5.0);
    }
    return bee;
}

static void enter(entrance *entrance, entrance_lane *lane, bool inward) {
    if (lane->count >= ENTRANCE_BEES_A_LANE) {
        return;
    }
    if (inward) {
        lane->waiting_in--;
    } else {
        lane->waiting_out--;
    }
    lane->bees[lane->count] = new_bee(entrance, inward);
    lane->count++;
}

/* Who is at the mouth goes in when the lane is free, or behind one that goes the
 * same way and has drawn its tail in. */
static void let_in(entrance *entrance, entrance_lane *lane) {
    if (!entrance->habits.single_file) {
        while (lane->waiting_in > 0 && lane->count < ENTRANCE_BEES_A_LANE) {
            enter(entrance, lane, true);
        }
        while (lane->waiting_out > 0 && lane->count < ENTRANCE_BEES_A_LANE) {
            enter(entrance, lane, false);
        }
        return;
    }
    if (lane->count == 0) {
        if (lane->waiting_in > 0 || lane->waiting_out > 0) {
            bool inward = lane->waiting_out == 0 || (lane->waiting_in > 0 && chance_share(&entrance->chance) < 0.5);
            enter(entrance, lane, inward);
        }
        return;
    }
    const entrance_bee *last = &lane->bees[lane->count - 1];
    bool drawn_in = last->head_mm - last->length_mm / 2 > 0 && !last->backing;
    if (drawn_in && (last->inward ? lane->waiting_in : lane->waiting_out) > 0) {
        enter(entrance, lane, last->inward);
    }
}

static void step(const entrance *entrance, entrance_lane *lane, int index, double seconds) {
    entrance_bee *bee = &lane->bees[index];
    if (bee->backing) {
        bee->head_mm -= bee->speed_mm_s * seconds;
        return;
    }
    double wish = bee->head_mm + bee->speed_mm_s * seconds;
    if (entrance->habits.single_file && index > 0) {
        const entrance_bee *before = &lane->bees[index - 1];
        double free_up_to = before->head_mm - before->length_mm - bee->gap_mm;
        if (wish > free_up_to) {
            wish = bee->head_mm > free_up_to ? bee->head_mm : free_up_to;
        }
    }
    bee->head_mm = wish;
    /* Who turns in a queue cannot back out through the others. */
    if (bee->head_mm >= bee->turns_at_mm && lane->count == 1) {
        bee->backing = true;
    }
}

static void leave(entrance_lane *lane, int index) {
    for (int i = index; i + 1 < lane->count; i++) {
        lane->bees[i] = lane->bees[i + 1];
    }
    lane->count--;
}

static void let_out(entrance *entrance, entrance_lane *lane) {
    for (int i = lane->count - 1; i >= 0; i--) {
        entrance_bee bee = lane->bees[i];
        if (bee.backing && bee.head_mm <= 0) {
            entrance->turned_back++;
            leave(lane, i);
        } else if (!bee.backing && bee.head_mm - bee.length_mm >= lane_length(entrance)) {
            if (bee.inward) {
                entrance->passed_in++;
            } else {
                entrance->passed_out++;
            }
            leave(lane, i);
        }
    }
}

void entrance_walk(entrance *entrance, double ms) {
    for (int l = 0; l < entrance->lane_count; l++) {
        entrance_lane *lane = &entrance->lanes[l];
        let_in(entrance, lane);
        for (int i = 0; i < lane->count; i++) {
            step(entrance, lane, i, ms / 1000.0);
        }
        let_out(entrance, lane);
    }
}

static bool breaks(entrance *entrance, const entrance_bee *bee, double beam_mm) {
    double tail_mm = bee->head_mm - bee->length_mm;
    if (beam_mm > bee->head_mm && beam_mm < bee->head_mm + ANTENNAE_MM) {
        return chance_share(&entrance->chance) < 0.3;
    }
    return tail_mm <= beam_mm && beam_mm <= bee->head_mm;
}

void entrance_beams(entrance *entrance, int index, bool *outer, bool *inner) {
    entrance_lane *lane = &entrance->lanes[index];
    *outer = false;
    *inner = false;
    for (int i = 0; i < lane->count; i++) {
        const entrance_bee *bee = &lane->bees[i];
        double far = FIRST_BEAM_MM + entrance->habits.beam_spacing_mm;
        *outer = breaks(entrance, bee, bee->inward ? FIRST_BEAM_MM : far) || *outer;
        *inner = breaks(entrance, bee, bee->inward ? far : FIRST_BEAM_MM) || *inner;
    }
}

int entrance_crowd(const entrance *entrance) {
    int crowd = 0;
    for (int l = 0; l < entrance->lane_count; l++) {
        crowd += entrance->lanes[l].count + entrance->lanes[l].waiting_in + entrance->lanes[l].waiting_out;
    }
    return crowd;
}
