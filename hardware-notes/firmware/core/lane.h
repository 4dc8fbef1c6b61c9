/* One lane of the entrance: two light beams one behind the other, closer together
 * than a bee is long. Knows beams as broken or clear; knows no light levels
 * (beam.h) and no pins. */
#ifndef DUSKLINE_LANE_H
#define DUSKLINE_LANE_H

#include "values.h"

/* A beam must stay changed for this long to count as changed: antennae and legs
 * flicker at the edge of a body. */
#define DL_LANE_DEBOUNCE_MS 4u
/* A lane that is never clear for this long is blocked (a dead bee, wax, propolis). */
#define DL_LANE_BLOCKED_MS 60000u

typedef struct dl_beam_edge {
    bool steady; /* debounced: broken */
    bool raw;    /* as last seen */
    uint64_t raw_since_ms;
} dl_beam_edge;

typedef struct dl_lane {
    dl_beam_edge outer;
    dl_beam_edge inner;
    uint8_t phase;          /* 0 clear, 1 outer, 2 both, 3 inner */
    int8_t position;        /* quarter steps inward since the lane was last clear */
    int8_t heading;         /* sign of the last step, 0 unknown */
    bool leaped;            /* both beams changed at once before a heading was known */
    int8_t far_side;        /* last side held with one beam: -1 outer, +1 inner, 0 none */
    uint8_t inward_passes;  /* outer to inner within this run */
    uint8_t outward_passes; /* inner to outer within this run */
    uint64_t run_since_ms;
    uint64_t last_count_ms;
    bool has_counted;
    uint32_t hold_off_ms; /* runs that end sooner than this after a count are dropped; 0 = none */
    uint32_t in;
    uint32_t out;
    uint32_t turned_back; /* came in part of the way and left where they came from */
    uint32_t undecided;   /* too fast or too crowded to tell */
} dl_lane;

typedef enum dl_lane_health {
    DL_LANE_WELL,
    DL_LANE_BLOCKED,
    DL_LANE_FLICKERING /* most runs are undecided: dirt, sun or ants */
} dl_lane_health;

void dl_lane_start(dl_lane *lane, uint32_t hold_off_ms);

/* One look at both beams. Times must not run backwards. Returns true while the
 * lane is in use, so that the caller can look more often. */
bool dl_lane_look(dl_lane *lane, bool outer_broken, bool inner_broken, uint64_t now_ms);

dl_lane_health dl_lane_judge(const dl_lane *lane, uint64_t now_ms);

#endif
