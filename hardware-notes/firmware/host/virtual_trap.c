#include "virtual_trap.h"

#include <math.h>

#define BEE_KG 0.00013
#define LOOK_MS 2u
#define LOOK_EMPTY_MS 20u

virtual_trap virtual_trap_open(const trap_days *days, uint32_t lanes, uint64_t seed) {
    return (virtual_trap){.days = *days,
                          .entrance = entrance_open((int)lanes, entrance_usual_habits(), seed),
                          .chance = chance_from(seed + 77)};
}

/* While nobody is in a lane the beams need no look every two milliseconds. */
uint32_t virtual_trap_stride(const virtual_trap *trap) {
    return entrance_crowd(&trap->entrance) > 0 ? LOOK_MS : LOOK_EMPTY_MS;
}

static void let_bees_come(virtual_trap *trap, double seconds, uint32_t span_ms) {
    traffic traffic = trap_traffic(&trap->days, seconds);
    double span_s = span_ms / 1000.0;
    if (chance_share(&trap->chance) < traffic.in_per_s * span_s) {
        entrance_arrive(&trap->entrance, true);
    }
    if (chance_share(&trap->chance) < traffic.out_per_s * span_s) {
        entrance_arrive(&trap->entrance, false);
    }
}

void virtual_trap_pass(virtual_trap *trap, uint64_t now_ms, uint32_t span_ms) {
    let_bees_come(trap, (double)now_ms / 1000.0, span_ms);
    entrance_walk(&trap->entrance, span_ms);
}

uint32_t virtual_trap_word(virtual_trap *trap) {
    double bees = (double)trap->entrance.passed_in - (double)trap->entrance.passed_out;
    double kg = trap->days.box_kg + bees * BEE_KG;
    double counts = VIRTUAL_ZERO_COUNTS + VIRTUAL_COUNTS_PER_KG * kg + 60.0 * chance_normal(&trap->chance);
    if (chance_share(&trap->chance) < 0.01) {
        counts += 200000.0;
    }
    return (uint32_t)(int32_t)lround(counts) & 0xFFFFFFu;
}

dl_readings virtual_trap_readings(const virtual_trap *trap, uint64_t now_ms) {
    double seconds = (double)now_ms / 1000.0;
    return (dl_readings){(int32_t)lround(100.0 * trap_air_c(&trap->days, seconds)),
                         (int32_t)lround(100.0 * trap_box_c(&trap->days, seconds)), 3900};
}
