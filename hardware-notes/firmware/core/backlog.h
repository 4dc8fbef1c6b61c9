/* Samples that wait to be sent, in memory that survives a restart. When it is
 * full, the newest takes the place of the oldest. */
#ifndef DUSKLINE_BACKLOG_H
#define DUSKLINE_BACKLOG_H

#include "storage.h"

#define DL_BACKLOG_SLOT_BYTES 58u

typedef struct dl_backlog {
    const dl_storage *storage;
    uint32_t begins_at; /* first byte of the ring within the storage */
    uint32_t slots;
    uint32_t newest;     /* serial of the newest sample, 0 = none yet */
    uint32_t sent_up_to; /* serial up to which the receiver has acknowledged */
} dl_backlog;

/* Finds what an earlier run left. Reads every slot once. Which samples had been
 * acknowledged is written along with each later sample, to spare the memory a
 * write of its own; so after a restart the last few may be sent a second time,
 * with the same times. */
void dl_backlog_open(dl_backlog *backlog, const dl_storage *storage, uint32_t begins_at);

/* Gives the sample the next serial and stores it. */
bool dl_backlog_add(dl_backlog *backlog, dl_sample *sample);

/* Samples not yet acknowledged that the ring still holds. */
uint32_t dl_backlog_waiting(const dl_backlog *backlog);

/* Reads the waiting sample number `index`, the oldest first. Returns false for a
 * slot that was torn by a power failure: pass it over. */
bool dl_backlog_peek(const dl_backlog *backlog, uint32_t index, dl_sample *sample);

/* Serial of waiting sample number `index`. */
uint32_t dl_backlog_serial(const dl_backlog *backlog, uint32_t index);

void dl_backlog_acknowledge(dl_backlog *backlog, uint32_t serial);

/* The newest stored sample, sent or not; false when there is none. */
bool dl_backlog_newest(const dl_backlog *backlog, dl_sample *sample);

#endif
