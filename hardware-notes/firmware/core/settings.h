/* Settings from the program: reads the pack described in settings.md, all or
 * nothing, and writes what is in force. Touches no storage and no schedule. */
#ifndef DUSKLINE_SETTINGS_H
#define DUSKLINE_SETTINGS_H

#include "keep.h"

#define DL_SETTINGS_BYTES_MAX 512u
#define DL_SETTINGS_RECORDS_MAX 16u
#define DL_ACKNOWLEDGEMENT_BYTES 768u

/* Unix seconds that a node believes: 2020 to 2100. */
#define DL_UNIX_EARLIEST 1577836800u
#define DL_UNIX_LATEST 4102444800u

typedef struct dl_settings {
    bool has_period;
    bool has_quick_period;
    bool has_quick;
    bool has_tare;
    bool has_time;
    uint32_t revision;
    uint32_t period_s;
    uint32_t quick_period_s;
    dl_quick_choice quick;
    uint32_t tare;
    uint32_t unix_s;
} dl_settings;

/* NULL when the pack is good; otherwise what to name in `refused`. `kept` is what
 * is in force now: a pack may change one of two periods that must fit together. */
const char *dl_settings_read(dl_settings *settings, const dl_kept *kept, const char *bytes, size_t count);

/* Takes over the periods, the choice and the revision, and a first tare number as
 * baseline. Returns true when a tare is asked for. */
bool dl_settings_apply(const dl_settings *settings, dl_kept *kept);

typedef struct dl_state_report {
    const char *base_name;
    const char *refused; /* NULL after a good pack */
    bool quick_now;
    uint32_t lanes;
    uint32_t lanes_faulty;
    uint32_t stored;
    uint32_t unix_s; /* 0 without a clock */
} dl_state_report;

/* Returns the length, 0 when `size` is too small. */
size_t dl_settings_acknowledge(const dl_kept *kept, const dl_state_report *report, char *bytes, size_t size);

#endif
