/* When to sample, when to send. Quick when something happens at the trap, slow
 * when nothing does, slower when the battery is low. */
#ifndef DUSKLINE_SCHEDULE_H
#define DUSKLINE_SCHEDULE_H

#include "keep.h"

/* Quick mode lasts this long after the last thing that happened. */
#define DL_QUICK_FOR_S 1200u
/* Weight change between two samples that means something happened, grams. */
#define DL_QUICK_WEIGHT_G 120
/* Passings a minute above the usual that mean something happened. */
#define DL_QUICK_TRAFFIC_PER_MIN 30u
/* In quiet hours this many samples go out together. */
#define DL_SAMPLES_A_PACK 5u
/* With a low battery the quiet period is this much longer. */
#define DL_LOW_BATTERY_FACTOR 4u

typedef struct dl_battery {
    int32_t low_mv;       /* at or below: save power */
    int32_t recovered_mv; /* at or above: stop saving; above low_mv, so that it doesn't flap */
    bool low;
} dl_battery;

/* A missing voltage changes nothing. */
void dl_battery_note(dl_battery *battery, int32_t battery_mv);

typedef struct dl_schedule {
    bool begun;
    uint32_t last_sample_s;
    uint32_t last_passings;
    int32_t last_weight_g;
    uint32_t usual_x16;     /* usual passings a minute, in sixteenths */
    uint32_t quick_until_s; /* 0 = not in quick mode */
    uint32_t unsent;
} dl_schedule;

bool dl_schedule_is_quick(const dl_schedule *schedule, const dl_kept *kept, uint32_t elapsed_s);

/* Seconds from now to the next sample, 0 = due. */
uint32_t dl_schedule_due_in(const dl_schedule *schedule, const dl_kept *kept, const dl_battery *battery,
                            uint32_t elapsed_s);

/* Takes note of a sample. Returns true when it is time to send. */
bool dl_schedule_note(dl_schedule *schedule, const dl_kept *kept, const dl_sample *sample);

#endif
