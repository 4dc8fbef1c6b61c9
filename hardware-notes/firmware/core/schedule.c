#include "schedule.h"

void dl_battery_note(dl_battery *battery, int32_t battery_mv) {
    if (battery_mv == DL_MISSING) {
        return;
    }
    if (battery_mv <= battery->low_mv) {
        battery->low = true;
    } else if (battery_mv >= battery->recovered_mv) {
        battery->low = false;
    }
}

bool dl_schedule_is_quick(const dl_schedule *schedule, const dl_kept *kept, uint32_t elapsed_s) {
    if (kept->quick != DL_QUICK_AUTO) {
        return kept->quick == DL_QUICK_ON;
    }
    return schedule->quick_until_s > elapsed_s;
}

uint32_t dl_schedule_due_in(const dl_schedule *schedule, const dl_kept *kept, const dl_battery *battery,
                            uint32_t elapsed_s) {
    if (!schedule->begun) {
        return 0;
    }
    uint32_t period = battery->low ? kept->period_s * DL_LOW_BATTERY_FACTOR : kept->period_s;
    if (dl_schedule_is_quick(schedule, kept, elapsed_s)) {
        period = kept->quick_period_s;
    }
    uint32_t since = elapsed_s - schedule->last_sample_s;
    return since >= period ? 0 : period - since;
}

static bool weight_moved(const dl_schedule *schedule, const dl_sample *sample) {
    if (schedule->last_weight_g == DL_MISSING || sample->weight_g == DL_MISSING) {
        return false;
    }
    int64_t change = (int64_t)sample->weight_g - schedule->last_weight_g;
    return change >= DL_QUICK_WEIGHT_G || change <= -DL_QUICK_WEIGHT_G;
}

/* Traffic far above what this trap has been used to over the last hours. The usual
 * follows with one part in 64 a sample, so a colony that has settled in becomes
 * usual within a day and no longer costs power. */
static bool traffic_rose(dl_schedule *schedule, const dl_sample *sample) {
    uint32_t passings = sample->in + sample->out;
    uint32_t seconds = sample->elapsed_s - schedule->last_sample_s;
    if (!sample->counted || seconds == 0) {
        return false;
    }
    uint64_t per_minute_x16 = (uint64_t)(passings - schedule->last_passings) * 60u * 16u / seconds;
    bool rose = per_minute_x16 > (uint64_t)schedule->usual_x16 * 2u + DL_QUICK_TRAFFIC_PER_MIN * 16u;
    int64_t gap = (int64_t)(per_minute_x16 < UINT16_MAX ? per_minute_x16 : UINT16_MAX) - schedule->usual_x16;
    schedule->usual_x16 = (uint32_t)((int64_t)schedule->usual_x16 + gap / 64);
    return rose;
}

bool dl_schedule_note(dl_schedule *schedule, const dl_kept *kept, const dl_sample *sample) {
    bool first = !schedule->begun;
    bool happened = false;
    if (!first) {
        bool rose = traffic_rose(schedule, sample);
        happened = rose || weight_moved(schedule, sample);
    }
    if (happened) {
        schedule->quick_until_s = sample->elapsed_s + DL_QUICK_FOR_S;
    }
    schedule->begun = true;
    schedule->last_sample_s = sample->elapsed_s;
    schedule->last_passings = sample->in + sample->out;
    if (sample->weight_g != DL_MISSING) {
        schedule->last_weight_g = sample->weight_g;
    } else if (first) {
        schedule->last_weight_g = DL_MISSING;
    }
    schedule->unsent++;
    bool quick = dl_schedule_is_quick(schedule, kept, sample->elapsed_s);
    if (first || quick || schedule->unsent >= DL_SAMPLES_A_PACK) {
        schedule->unsent = 0;
        return true;
    }
    return false;
}
