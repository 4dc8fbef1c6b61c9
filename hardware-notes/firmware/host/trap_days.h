/* A virtual trap's days: how many bees come and go at each moment, what the box
 * weighs, how warm it is. Invented, with the shape of a real arrival: scouts, more
 * scouts, the rush, foragers from the next morning. */
#ifndef DUSKLINE_TRAP_DAYS_H
#define DUSKLINE_TRAP_DAYS_H

#include <stdint.h>

typedef struct trap_days {
    uint32_t begins_unix_s;
    double zone_hours;   /* local time ahead of UTC */
    double arrival_hour; /* local hours after the local midnight before the start; < 0: no swarm comes */
    double swarm_bees;   /* 11,000 bees weigh 1.43 kg when gorged */
    double rush_s;       /* time that the swarm takes to enter */
    double box_kg;       /* empty box with frames */
} trap_days;

typedef struct traffic {
    double in_per_s;
    double out_per_s;
} traffic;

/* `seconds` since the start. */
traffic trap_traffic(const trap_days *days, double seconds);
double trap_air_c(const trap_days *days, double seconds);
/* A settled cluster keeps its box warm. */
double trap_box_c(const trap_days *days, double seconds);

#endif
