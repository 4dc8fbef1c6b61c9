/* From converter codes to a weight: raw 24-bit words in, mean and standard
 * deviation without outliers out. */
#ifndef DUSKLINE_WEIGHING_H
#define DUSKLINE_WEIGHING_H

#include "values.h"

#define DL_WEIGHING_WINDOW 48u
/* Fewer good readings than this in a window give no weight. */
#define DL_WEIGHING_ENOUGH 8u

/* Sign-extends a 24-bit two's complement word. Returns DL_MISSING for the two
 * saturated codes, and for all ones and all zeros, which a data line that is cut
 * off or held shows. */
int32_t dl_converter_counts(uint32_t word);

typedef struct dl_calibration {
    int32_t zero_counts;
    int32_t counts_per_kg; /* 0 = not calibrated; may be negative (bridge wired in reverse) */
} dl_calibration;

typedef struct dl_window {
    int32_t readings[DL_WEIGHING_WINDOW];
    uint32_t used;
    uint32_t dropped; /* readings that were missing */
} dl_window;

typedef struct dl_weight {
    int32_t mean_counts; /* DL_MISSING when too few readings were good */
    int32_t sd_counts;
    int32_t weight_g; /* DL_MISSING when not calibrated */
    int32_t sd_g;
    uint32_t rejected; /* outliers left out */
} dl_weight;

void dl_window_clear(dl_window *window);
/* Readings beyond the window's size replace none: they are left out. */
void dl_window_add(dl_window *window, int32_t counts);

/* Mean and standard deviation (n - 1) of the readings within 3.5 scaled median
 * absolute deviations of the median; the limit 3.5 is Iglewicz and Hoaglin's
 * (How to Detect and Handle Outliers, 1993; recalled from memory). */
dl_weight dl_window_weigh(dl_window *window, dl_calibration calibration);

/* Calibration from two known weights. Returns false when the two readings are
 * too close to tell (less than 1000 counts) or the weights are the same. */
bool dl_calibrate(dl_calibration *calibration, int32_t counts_low, int32_t weight_low_g, int32_t counts_high,
                  int32_t weight_high_g);

#endif
