#include "check.h"
#include "schedule.h"
#include "suites.h"

static const dl_kept KEPT = {.period_s = 120, .quick_period_s = 30};
static const dl_battery FULL = {3400, 3600, false};

static dl_sample at(uint32_t elapsed_s, uint32_t passings, int32_t weight_g) {
    return (dl_sample){.elapsed_s = elapsed_s, .counted = true, .in = passings, .weight_g = weight_g};
}

static dl_schedule quiet_hour(void) {
    dl_schedule schedule = {.last_weight_g = DL_MISSING};
    for (uint32_t i = 0; i < 30; i++) {
        dl_sample sample = at(i * 120, i, 12000);
        (void)dl_schedule_note(&schedule, &KEPT, &sample);
    }
    return schedule;
}

static void the_first_sample_is_due_at_once_and_sent(void) {
    dl_schedule schedule = {.last_weight_g = DL_MISSING};
    CHECK_NUMBER(dl_schedule_due_in(&schedule, &KEPT, &FULL, 0), 0);
    dl_sample sample = at(0, 0, 12000);
    CHECK(dl_schedule_note(&schedule, &KEPT, &sample));
}

static void a_quiet_trap_sends_every_fifth_sample(void) {
    dl_schedule schedule = {.last_weight_g = DL_MISSING};
    uint32_t sent = 0;
    for (uint32_t i = 0; i < 51; i++) {
        dl_sample sample = at(i * 120, 0, 12000);
        sent += dl_schedule_note(&schedule, &KEPT, &sample) ? 1 : 0;
    }
    CHECK_NUMBER(sent, 11);
    CHECK_NUMBER(dl_schedule_due_in(&schedule, &KEPT, &FULL, 50 * 120 + 20), 100);
}

static void a_rush_quickens_and_sends_at_once(void) {
    dl_schedule schedule = quiet_hour();
    dl_sample rush = at(3600, 29 + 200, 12010);
    CHECK(dl_schedule_note(&schedule, &KEPT, &rush));
    CHECK(dl_schedule_is_quick(&schedule, &KEPT, 3600));
    CHECK_NUMBER(dl_schedule_due_in(&schedule, &KEPT, &FULL, 3600), 30);
    CHECK(!dl_schedule_is_quick(&schedule, &KEPT, 3600 + DL_QUICK_FOR_S));
}

static void weight_alone_quickens(void) {
    dl_schedule schedule = quiet_hour();
    dl_sample heavier = at(3600, 30, 12000 + DL_QUICK_WEIGHT_G);
    CHECK(dl_schedule_note(&schedule, &KEPT, &heavier));
    CHECK(dl_schedule_is_quick(&schedule, &KEPT, 3601));
}

static void scouts_by_the_dozen_do_not_quicken(void) {
    dl_schedule schedule = quiet_hour();
    dl_sample scouts = at(3600, 29 + 40, 12000);
    (void)dl_schedule_note(&schedule, &KEPT, &scouts);
    CHECK(!dl_schedule_is_quick(&schedule, &KEPT, 3600));
}

static void a_settled_colony_becomes_usual(void) {
    dl_schedule schedule = quiet_hour();
    uint32_t passings = 29;
    uint32_t now = 3480;
    for (uint32_t i = 0; i < 1200; i++) {
        uint32_t wait = dl_schedule_due_in(&schedule, &KEPT, &FULL, now);
        now += wait;
        passings += wait * 100 / 60;
        dl_sample sample = at(now, passings, 13500);
        (void)dl_schedule_note(&schedule, &KEPT, &sample);
    }
    CHECK(!dl_schedule_is_quick(&schedule, &KEPT, now));
}

static void the_keeper_can_force_either_pace(void) {
    dl_schedule schedule = quiet_hour();
    dl_kept kept = KEPT;
    kept.quick = DL_QUICK_ON;
    CHECK(dl_schedule_is_quick(&schedule, &kept, 3600));
    kept.quick = DL_QUICK_OFF;
    dl_sample rush = at(3600, 1000, 14000);
    (void)dl_schedule_note(&schedule, &kept, &rush);
    CHECK(!dl_schedule_is_quick(&schedule, &kept, 3600));
}

static void a_missing_weight_is_no_change_of_weight(void) {
    dl_schedule schedule = quiet_hour();
    dl_sample missing = at(3600, 30, DL_MISSING);
    (void)dl_schedule_note(&schedule, &KEPT, &missing);
    dl_sample back = at(3720, 31, 12010);
    (void)dl_schedule_note(&schedule, &KEPT, &back);
    CHECK(!dl_schedule_is_quick(&schedule, &KEPT, 3720));
}

static void a_low_battery_slows_until_it_has_recovered(void) {
    dl_battery battery = FULL;
    dl_battery_note(&battery, DL_MISSING);
    CHECK(!battery.low);
    dl_battery_note(&battery, 3400);
    CHECK(battery.low);
    dl_schedule schedule = quiet_hour();
    CHECK_NUMBER(dl_schedule_due_in(&schedule, &KEPT, &battery, 3480), 480);
    dl_battery_note(&battery, 3500);
    CHECK(battery.low);
    dl_battery_note(&battery, 3600);
    CHECK(!battery.low);
}

const test_case schedule_tests[] = {
    TEST(the_first_sample_is_due_at_once_and_sent),   TEST(a_quiet_trap_sends_every_fifth_sample),
    TEST(a_rush_quickens_and_sends_at_once),          TEST(weight_alone_quickens),
    TEST(scouts_by_the_dozen_do_not_quicken),         TEST(a_settled_colony_becomes_usual),
    TEST(the_keeper_can_force_either_pace),           TEST(a_missing_weight_is_no_change_of_weight),
    TEST(a_low_battery_slows_until_it_has_recovered), {NULL, NULL}};
