/* One light beam: turns two light readings, taken with the lamp on and off, into
 * broken, clear or dazzled, and follows the slow loss of light as dirt grows. */
#ifndef DUSKLINE_BEAM_H
#define DUSKLINE_BEAM_H

#include "values.h"

typedef enum dl_beam_view { DL_BEAM_CLEAR, DL_BEAM_BROKEN, DL_BEAM_DAZZLED } dl_beam_view;

typedef struct dl_beam {
    int32_t full_scale; /* converter's highest code */
    int32_t new_level;  /* lit minus dark when the beam was commissioned */
    int32_t level_x256; /* lit minus dark of the clear beam now, in 1/256 codes */
} dl_beam;

void dl_beam_start(dl_beam *beam, int32_t full_scale, int32_t clear_level);

/* `lit` and `dark` are converter codes with the lamp on and off. The difference
 * takes steady daylight out; a dark reading near full scale leaves no room for
 * the lamp, and the beam is dazzled. */
dl_beam_view dl_beam_look(dl_beam *beam, int32_t lit, int32_t dark);

/* True when the clear beam has lost two thirds of its light: time to wipe it; or when it never had any to speak of (a
 * lamp the wrong way round), and would never be seen broken. */
bool dl_beam_dirty(const dl_beam *beam);

#endif
