#include "count_loss.h"

#include "lane.h"

#include <math.h>

#define LOOK_MS 2u

count_loss measure_count_loss(entrance_habits habits, uint32_t hold_off_ms, double rate_per_s, double bees,
                              uint64_t seed) {
    entrance entrance = entrance_open(1, habits, seed);
    chance arrivals = chance_from(seed + 1000);
    dl_lane lane;
    dl_lane_start(&lane, hold_off_ms);
    double duration_ms = bees / rate_per_s * 1000.0;
    double next_ms = chance_wait(&arrivals) / rate_per_s * 1000.0;
    double offered = 0;
    uint64_t now_ms = 0;
    for (; (double)now_ms < duration_ms; now_ms += LOOK_MS) {
        while (next_ms <= (double)now_ms) {
            entrance_arrive(&entrance, true);
            offered++;
            next_ms += chance_wait(&arrivals) / rate_per_s * 1000.0;
        }
        entrance_walk(&entrance, LOOK_MS);
        bool outer;
        bool inner;
        entrance_beams(&entrance, 0, &outer, &inner);
        (void)dl_lane_look(&lane, outer, inner, now_ms);
    }
    double seconds = (double)now_ms / 1000.0;
    return (count_loss){.offered_per_s = offered / seconds,
                        .true_per_s = entrance.passed_in / seconds,
                        .counted_per_s = (lane.in + lane.out) / seconds,
                        .wrong_way_per_s = lane.out / seconds};
}

double nonparalyzable_observed(double true_per_s, double tau_s) {
    return true_per_s / (1.0 + true_per_s * tau_s);
}

double nonparalyzable_true(double observed_per_s, double tau_s) {
    return observed_per_s / (1.0 - observed_per_s * tau_s);
}

double paralyzable_observed(double true_per_s, double tau_s) {
    return true_per_s * exp(-true_per_s * tau_s);
}
