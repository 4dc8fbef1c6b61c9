/* The decoder at the virtual entrance. The published losses of a non-paralyzable
 * counter at n tau = 0.1, 0.5, 1 and 2 are closed-form values of m = n / (1 + n tau)
 * (Knoll, Radiation Detection and Measurement, chapter 4); the worked example with
 * a resolving time of 0.20 ms and 30,000 counts a minute is a textbook exercise of
 * the Irodov kind (2.40, Geiger-Mueller counter). */
#include "check.h"
#include "count_loss.h"
#include "lane.h"
#include "suites.h"

static void the_formula_gives_the_textbooks_example(void) {
    CHECK_NEAR(nonparalyzable_true(30000.0 / 60.0, 0.0002) * 60.0, 33333.333333333336, 1e-6);
    CHECK_NEAR(nonparalyzable_observed(1000.0, 0.0001), 909.090909090909, 1e-9);
    CHECK_NEAR(nonparalyzable_true(nonparalyzable_observed(6.0, 0.05), 0.05), 6.0, 1e-9);
    CHECK_NEAR(paralyzable_observed(20.0, 0.05), 7.357588823428847, 1e-9);
}

/* Short bodies that cross in a few milliseconds and ignore each other, a hold-off
 * far longer than a crossing: the textbook's non-paralyzable counter. */
static void with_a_hold_off_the_lane_loses_what_the_formula_says(void) {
    entrance_habits particles = {.beam_spacing_mm = 4.0, .length_mm = 7.0, .speed_mm_s = 400.0, .single_file = false};
    const double tau_s = 2.5;
    static const struct {
        double n_tau;
        double loss;
    } published[] = {{0.1, 0.09090909}, {0.5, 0.33333333}, {1.0, 0.5}, {2.0, 0.66666667}};
    for (size_t i = 0; i < 4; i++) {
        count_loss measured =
            measure_count_loss(particles, (uint32_t)(tau_s * 1000), published[i].n_tau / tau_s, 6000, 42 + i);
        CHECK_NEAR(1.0 - measured.counted_per_s / measured.true_per_s, published[i].loss, 0.03);
    }
}

static void single_bees_are_all_counted(void) {
    entrance_habits habits = entrance_usual_habits();
    habits.turns_back = 0;
    count_loss measured = measure_count_loss(habits, 0, 0.02, 400, 7);
    CHECK_NEAR(measured.counted_per_s / measured.true_per_s, 1.0, 0.01);
}

static void bees_that_turn_back_are_not_counted(void) {
    entrance_habits habits = entrance_usual_habits();
    habits.turns_back = 1;
    entrance entrance = entrance_open(1, habits, 3);
    dl_lane lane;
    dl_lane_start(&lane, 0);
    uint64_t now_ms = 0;
    for (int bee = 0; bee < 300; bee++) {
        entrance_arrive(&entrance, bee % 2 == 0);
        for (int i = 0; i < 1000; i++, now_ms += 2) {
            entrance_walk(&entrance, 2);
            bool outer;
            bool inner;
            entrance_beams(&entrance, 0, &outer, &inner);
            (void)dl_lane_look(&lane, outer, inner, now_ms);
        }
    }
    CHECK_NUMBER(entrance.turned_back, 300);
    CHECK_NUMBER(lane.in + lane.out, 0);
}

static void both_directions_keep_apart(void) {
    entrance_habits habits = entrance_usual_habits();
    habits.turns_back = 0;
    entrance entrance = entrance_open(4, habits, 11);
    dl_lane lanes[4];
    for (int lane = 0; lane < 4; lane++) {
        dl_lane_start(&lanes[lane], 0);
    }
    uint64_t now_ms = 0;
    for (int tick = 0; tick < 400000; tick++, now_ms += 2) {
        if (tick % 1000 == 0 && tick < 390000) {
            entrance_arrive(&entrance, tick % 3000 != 0);
        }
        entrance_walk(&entrance, 2);
        for (int lane = 0; lane < 4; lane++) {
            bool outer;
            bool inner;
            entrance_beams(&entrance, lane, &outer, &inner);
            (void)dl_lane_look(&lanes[lane], outer, inner, now_ms);
        }
    }
    uint32_t in = 0;
    uint32_t out = 0;
    for (int lane = 0; lane < 4; lane++) {
        in += lanes[lane].in;
        out += lanes[lane].out;
    }
    CHECK_NUMBER(entrance.passed_in, 260);
    CHECK_NUMBER(entrance.passed_out, 130);
    CHECK_NEAR(in, 260, 3);
    CHECK_NEAR(out, 130, 2);
}

static void a_rush_is_undercounted_never_overcounted(void) {
    entrance_habits habits = entrance_usual_habits();
    habits.turns_back = 0;
    count_loss measured = measure_count_loss(habits, 0, 3.0, 3000, 5);
    CHECK(measured.counted_per_s < measured.true_per_s);
    CHECK(measured.counted_per_s > 0.4 * measured.true_per_s);
    CHECK(measured.wrong_way_per_s < 0.01 * measured.true_per_s);
}

const test_case entrance_tests[] = {TEST(the_formula_gives_the_textbooks_example),
                                    TEST(with_a_hold_off_the_lane_loses_what_the_formula_says),
                                    TEST(single_bees_are_all_counted),
                                    TEST(bees_that_turn_back_are_not_counted),
                                    TEST(both_directions_keep_apart),
                                    TEST(a_rush_is_undercounted_never_overcounted),
                                    {NULL, NULL}};
