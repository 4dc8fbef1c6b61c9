#include "beam.h"

/* A beam that gives less than this part of the full scale when new has no lamp. */
#define FAINT_PART 32

void dl_beam_start(dl_beam *beam, int32_t full_scale, int32_t clear_level) {
    beam->full_scale = full_scale;
    beam->new_level = clear_level;
    beam->level_x256 = clear_level * 256;
}

dl_beam_view dl_beam_look(dl_beam *beam, int32_t lit, int32_t dark) {
    if (dark > beam->full_scale - beam->full_scale / 8) {
        return DL_BEAM_DAZZLED;
    }
    int32_t difference = lit - dark;
    if (difference * 2 < beam->level_x256 / 256) {
        return DL_BEAM_BROKEN;
    }
    /* One part in 1024 a look: dirt takes days, a passing bee must not move it. */
    beam->level_x256 += (difference * 256 - beam->level_x256) / 1024;
    return DL_BEAM_CLEAR;
}

bool dl_beam_dirty(const dl_beam *beam) {
    return beam->new_level < beam->full_scale / FAINT_PART || beam->level_x256 / 256 < beam->new_level / 3;
}
