/* Samples to SenML (RFC 8428), as JSON or as CBOR (RFC 8949), digit for digit:
 * grams go out as a decimal with three places, never through a binary fraction. */
#ifndef DUSKLINE_SENML_H
#define DUSKLINE_SENML_H

#include "values.h"

typedef enum dl_format { DL_JSON, DL_CBOR } dl_format;

/* Room that a pack of one sample never exceeds, in either format. */
#define DL_PACK_BYTES_MIN 640u
#define DL_BASE_NAME_BYTES 48u

/* When a sample was taken, for a receiver. */
typedef struct dl_time {
    bool absolute;
    uint32_t unix_s; /* when absolute */
    uint32_t age_s;  /* otherwise: seconds before now, less than 2^28 */
} dl_time;

/* Writes a pack record by record into a caller's buffer. Knows no heap; when the
 * buffer is full the sample that did not fit is left out whole. */
typedef struct dl_pack {
    dl_format format;
    uint8_t *bytes;
    size_t size;
    size_t used;
    uint32_t records;
    bool overflowed;
} dl_pack;

/* `size` at least 8. */
void dl_pack_begin(dl_pack *pack, dl_format format, uint8_t *bytes, size_t size);

/* Adds all records of a sample; `base_name` only with the first, else NULL; `seq`
 * 0 = none. Returns false, with the pack as before, when it does not fit. */
bool dl_pack_add(dl_pack *pack, const char *base_name, const dl_sample *sample, dl_time time, uint32_t seq);

/* Closes the pack. Returns its length in bytes, 0 when it holds no record. */
size_t dl_pack_end(dl_pack *pack);

#endif
