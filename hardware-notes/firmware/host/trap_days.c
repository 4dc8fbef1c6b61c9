#include "trap_days.h"

#include <math.h>

#define TURN 6.28318530717958647692

static double local_hours(const trap_days *days, double seconds) {
    double first = fmod((double)days->begins_unix_s + days->zone_hours * 3600.0, 86400.0) / 3600.0;
    return first + seconds / 3600.0;
}

/* 0 outside flight hours, 1 at their height. */
static double flight(double hours) {
    double of_day = fmod(hours, 24.0);
    if (of_day < 9.0 || of_day > 19.0) {
        return 0.0;
    }
    return sin((of_day - 9.0) / 10.0 * TURN / 2.0);
}

static double scouts_per_s(const trap_days *days, double hours) {
    double before = days->arrival_hour - hours;
    if (days->arrival_hour < 0 || before > 26.0) {
        return 0.002 * flight(hours);
    }
    return (0.02 + 0.25 * exp(-before / 1.5)) * flight(hours);
}

traffic trap_traffic(const trap_days *days, double seconds) {
    double hours = local_hours(days, seconds);
    if (days->arrival_hour < 0 || hours < days->arrival_hour) {
        double scouts = scouts_per_s(days, hours);
        return (traffic){scouts, scouts};
    }
    double since_s = (hours - days->arrival_hour) * 3600.0;
    if (since_s < days->rush_s) {
        return (traffic){days->swarm_bees / days->rush_s, 0.05};
    }
    double foragers = 0.5 * flight(hours);
    double morning = fmod(hours, 24.0) < 11.0 ? 1.15 : 0.97;
    return (traffic){foragers, foragers * morning};
}

double trap_air_c(const trap_days *days, double seconds) {
    double of_day = fmod(local_hours(days, seconds), 24.0);
    return 18.0 + 6.0 * cos((of_day - 15.0) / 24.0 * TURN);
}

double trap_box_c(const trap_days *days, double seconds) {
    double air = trap_air_c(days, seconds);
    double settled_h = local_hours(days, seconds) - days->arrival_hour;
    if (days->arrival_hour < 0 || settled_h < 0) {
        return air;
    }
    double nest = 33.0 < air ? air : 33.0;
    return air + (nest - air) * 0.6 * (1.0 - exp(-settled_h));
}
