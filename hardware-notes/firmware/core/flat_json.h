/* Reads a JSON array of flat objects (no nesting), which is all that SenML is, in
 * place and without a heap. Strict: what is not such an array is refused. */
#ifndef DUSKLINE_FLAT_JSON_H
#define DUSKLINE_FLAT_JSON_H

#include "values.h"

typedef enum dl_json_kind { DL_JSON_STRING, DL_JSON_NUMBER, DL_JSON_TRUTH, DL_JSON_NULL } dl_json_kind;

typedef struct dl_json_value {
    dl_json_kind kind;
    const char *words; /* string: its bytes between the quotes */
    size_t length;
    bool escaped; /* string: holds a backslash, so its bytes are not its text */
    bool whole;   /* number: a whole one within 64 bits */
    int64_t number;
    bool truth;
} dl_json_value;

typedef struct dl_json_reader {
    const char *at;
    const char *end;
} dl_json_reader;

typedef enum dl_json_event {
    DL_JSON_RECORD,
    DL_JSON_FIELD,
    DL_JSON_RECORD_END,
    DL_JSON_DONE,
    DL_JSON_BROKEN
} dl_json_event;

typedef struct dl_json_walk {
    dl_json_reader reader;
    uint8_t state;
    dl_json_value key;
    dl_json_value value;
} dl_json_walk;

void dl_json_begin(dl_json_walk *walk, const char *bytes, size_t count);

/* The next thing in the text; after DONE or BROKEN, the same again. */
dl_json_event dl_json_next(dl_json_walk *walk);

bool dl_json_is(const dl_json_value *value, const char *words);

#endif
