/* Measures what the lane decoder loses at a given rate, and the two textbook
 * models of dead time to compare with. */
#ifndef DUSKLINE_COUNT_LOSS_H
#define DUSKLINE_COUNT_LOSS_H

#include "entrance.h"

typedef struct count_loss {
    double offered_per_s;   /* bees that came to the lane */
    double true_per_s;      /* bees that passed */
    double counted_per_s;   /* bees that the firmware counted, both ways */
    double wrong_way_per_s; /* counted outward though nobody went out */
} count_loss;

/* One lane, bees inward at random (Poisson) moments, looked at every 2 ms. */
count_loss measure_count_loss(entrance_habits habits, uint32_t hold_off_ms, double rate_per_s, double bees,
                              uint64_t seed);

/* m = n / (1 + n tau); Knoll, Radiation Detection and Measurement, chapter 4. */
double nonparalyzable_observed(double true_per_s, double tau_s);
/* n = m / (1 - m tau), for m < 1 / tau. */
double nonparalyzable_true(double observed_per_s, double tau_s);
/* m = n exp(-n tau); the same chapter (recalled from memory). */
double paralyzable_observed(double true_per_s, double tau_s);

#endif
