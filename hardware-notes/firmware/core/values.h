/* Values that all parts of the core share: whole numbers only, so that what is
 * measured, stored and sent is the same number to the last digit. */
#ifndef DUSKLINE_VALUES_H
#define DUSKLINE_VALUES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A quantity that was not measured or could not be read. Never 0. */
#define DL_MISSING INT32_MIN

/* What the node measured at one instant. Counters run from the start of the
 * node; a missing quantity is DL_MISSING, missing counters have `counted` false. */
typedef struct dl_sample {
    uint32_t serial;     /* number of the sample over the node's whole life, from 1 */
    uint32_t elapsed_s;  /* seconds under power over the node's whole life */
    uint32_t unix_s;     /* Unix seconds, 0 when the node had no clock */
    uint32_t boot;       /* how often the node had started */
    bool counted;        /* whether an entrance counter is fitted */
    uint32_t in;         /* bees inward since the start */
    uint32_t out;        /* bees outward since the start */
    int32_t weight_g;    /* mean weight, grams */
    int32_t weight_sd_g; /* standard deviation in the window, grams */
    int32_t load_counts; /* mean converter counts, for a scale without calibration */
    int32_t cell_cc;     /* load cell temperature, hundredths of a degree Celsius */
    int32_t box_cc;      /* temperature in the box, hundredths of a degree Celsius */
    int32_t battery_mv;  /* battery, millivolts */
} dl_sample;

#endif
