/* Text and numbers into a buffer of fixed size, without the C library's printf,
 * which costs a small board more than the rest of this core. */
#ifndef DUSKLINE_TEXT_H
#define DUSKLINE_TEXT_H

#include "values.h"

typedef struct dl_text {
    char *bytes;
    size_t size;
    size_t used;
    bool overflowed;
} dl_text;

void dl_text_begin(dl_text *text, char *bytes, size_t size);
void dl_text_add(dl_text *text, const char *words);
void dl_text_number(dl_text *text, int64_t value);

/* `value` in units of 10^-places, places 0 to 3: (1234, 3) is 1.234, (-50, 3) is -0.05. */
void dl_text_decimal(dl_text *text, int32_t value, unsigned places);

#endif
