/* A virtual entrance: bees with lengths, speeds and intentions walk through lanes
 * between two light beams. Knows the truth of who passed; the firmware sees only
 * beams. All figures of bees below are assumptions, to be replaced by counts by
 * hand (counting.md tells how). */
#ifndef DUSKLINE_ENTRANCE_H
#define DUSKLINE_ENTRANCE_H

#include "chance.h"

#include <stdbool.h>
#include <stdint.h>

#define ENTRANCE_LANES_MAX 12
#define ENTRANCE_BEES_A_LANE 48

typedef struct entrance_bee {
    bool inward;
    double head_mm; /* along its own way: 0 at the lane's mouth */
    double length_mm;
    double speed_mm_s;
    double gap_mm;      /* room it leaves to the bee before it; negative: climbs over its tail */
    double turns_at_mm; /* where a bee that changes its mind turns; beyond the lane: goes through */
    bool backing;
} entrance_bee;

typedef struct entrance_lane {
    entrance_bee bees[ENTRANCE_BEES_A_LANE]; /* the first one entered first */
    int count;
    int waiting_in;
    int waiting_out;
} entrance_lane;

typedef struct entrance_habits {
    double beam_spacing_mm;
    double length_mm;  /* mean; deviation 6 % */
    double speed_mm_s; /* median walking speed; log deviation 0.3 */
    double gap_mm;     /* mean room to the bee before it; deviation as below */
    double gap_sd_mm;
    double turns_back; /* share of bees that turn round in the lane */
    bool single_file;  /* false: bees ignore each other, as particles at a detector do */
} entrance_habits;

typedef struct entrance {
    entrance_habits habits;
    entrance_lane lanes[ENTRANCE_LANES_MAX];
    int lane_count;
    chance chance;
    uint32_t passed_in; /* the truth */
    uint32_t passed_out;
    uint32_t turned_back;
} entrance;

/* A worker of 13 mm at 80 mm/s, beams 4 mm apart, 2 mm of room with a deviation of
 * 3 mm, one bee in twenty turns back. */
entrance_habits entrance_usual_habits(void);

entrance entrance_open(int lanes, entrance_habits habits, uint64_t seed);

/* Bees come to the entrance, each at a lane of its own choice. */
void entrance_arrive(entrance *entrance, bool inward);

/* Moves everybody on by `ms` milliseconds. */
void entrance_walk(entrance *entrance, double ms);

/* Whether the beams of a lane are broken now, with antennae that flicker. */
void entrance_beams(entrance *entrance, int lane, bool *outer, bool *inner);

/* Bees in and before the lanes. */
int entrance_crowd(const entrance *entrance);

#endif
