/* What a node must still know after a restart, kept twice: a write that power
 * failure tears leaves the older copy. */
#ifndef DUSKLINE_KEEP_H
#define DUSKLINE_KEEP_H

#include "storage.h"

#define DL_KEEP_SLOT_BYTES 64u
#define DL_KEEP_BYTES (2u * DL_KEEP_SLOT_BYTES)

typedef enum dl_quick_choice { DL_QUICK_AUTO, DL_QUICK_ON, DL_QUICK_OFF } dl_quick_choice;

typedef struct dl_kept {
    uint32_t version; /* raised with each write */
    uint32_t boot;
    uint32_t revision; /* of the settings in force, 0 = never set */
    uint32_t period_s;
    uint32_t quick_period_s;
    dl_quick_choice quick;
    bool tare_known;
    uint32_t tare; /* last tare request carried out or taken as baseline */
    int32_t zero_counts;
    int32_t counts_per_kg;
} dl_kept;

/* The newest intact copy, or the defaults of a fresh board. */
dl_kept dl_keep_read(const dl_storage *storage);

/* Raises the version and writes over the older copy. */
bool dl_keep_write(const dl_storage *storage, dl_kept *kept);

#endif
