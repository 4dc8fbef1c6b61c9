#include "check.h"
#include "lane.h"
#include "suites.h"

/* Plays a picture of both beams, one letter per 10 ms:
 * '.' clear, 'o' outer broken, 'b' both, 'i' inner. */
static void play(dl_lane *lane, const char *picture) {
    uint64_t now = 1000;
    for (; *picture != '\0'; picture++) {
        bool outer = *picture == 'o' || *picture == 'b';
        bool inner = *picture == 'i' || *picture == 'b';
        for (int i = 0; i < 5; i++) {
            (void)dl_lane_look(lane, outer, inner, now);
            now += 2;
        }
    }
}

static dl_lane after(const char *picture) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    play(&lane, picture);
    return lane;
}

static void check_counts(const char *picture, uint32_t in, uint32_t out, uint32_t back, uint32_t undecided) {
    dl_lane lane = after(picture);
    CHECK_NUMBER(lane.in, in);
    CHECK_NUMBER(lane.out, out);
    CHECK_NUMBER(lane.turned_back, back);
    CHECK_NUMBER(lane.undecided, undecided);
}

static void a_bee_that_walks_in_counts_in(void) {
    check_counts("..oobbbbii..", 1, 0, 0, 0);
}
static void a_bee_that_walks_out_counts_out(void) {
    check_counts("..iibbbboo..", 0, 1, 0, 0);
}
static void a_bee_that_looks_in_and_leaves_counts_nowhere(void) {
    check_counts("..oobboo..", 0, 0, 1, 0);
    check_counts("..ooo..", 0, 0, 1, 0);
}
static void a_bee_that_hesitates_at_the_inner_beam_counts_once(void) {
    check_counts("..oobbiibbiibbii..", 1, 0, 0, 0);
}
static void a_bee_that_backs_out_after_nearly_passing_counts_nowhere(void) {
    check_counts("..oobbiibboo..", 0, 0, 1, 0);
}
static void two_bees_nose_to_tail_count_two(void) {
    check_counts("..oobbiibboobbii..", 2, 0, 0, 0);
}
static void three_bees_out_in_a_chain_count_three(void) {
    check_counts(".iibboobbiibboobbiibboo.", 0, 3, 0, 0);
}
static void a_bee_faster_than_one_look_still_counts_when_one_side_was_seen(void) {
    check_counts("..oobb..", 1, 0, 0, 0);
    check_counts("..bii..", 1, 0, 0, 0);
}
static void both_beams_at_once_tell_no_direction(void) {
    check_counts("..bb..", 0, 0, 0, 1);
}
static void a_bee_in_and_a_bee_out_count_one_each(void) {
    check_counts(".obi...ibo.", 1, 1, 0, 0);
}

static void antennae_that_flicker_do_not_count(void) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    for (uint64_t now = 0; now < 1000; now++) {
        (void)dl_lane_look(&lane, (now & 2) != 0, false, now);
    }
    CHECK_NUMBER(lane.in + lane.out + lane.turned_back + lane.undecided, 0);
}

static void a_dead_bee_blocks_the_lane_until_it_is_cleared(void) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    (void)dl_lane_look(&lane, true, true, 0);
    (void)dl_lane_look(&lane, true, true, 10);
    CHECK(dl_lane_judge(&lane, 59000) == DL_LANE_WELL);
    CHECK(dl_lane_judge(&lane, 60010) == DL_LANE_BLOCKED);
    (void)dl_lane_look(&lane, false, false, 61000);
    (void)dl_lane_look(&lane, false, false, 61010);
    CHECK(dl_lane_judge(&lane, 61010) == DL_LANE_WELL);
}

static void a_lane_that_mostly_cannot_tell_is_called_flickering(void) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    for (int i = 0; i < 39; i++) {
        play(&lane, ".bb.");
    }
    CHECK(dl_lane_judge(&lane, 2000) == DL_LANE_WELL);
    play(&lane, ".bb.");
    CHECK(dl_lane_judge(&lane, 2000) == DL_LANE_FLICKERING);
}

static void a_lane_in_use_asks_to_be_looked_at_more_often(void) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    CHECK(!dl_lane_look(&lane, false, false, 0));
    CHECK(dl_lane_look(&lane, true, false, 1));
}

static void a_crowd_without_a_gap_never_runs_off_the_scale(void) {
    dl_lane lane;
    dl_lane_start(&lane, 0);
    uint64_t now = 0;
    const bool outer[] = {true, true, false};
    const bool inner[] = {false, true, true};
    for (int i = 0; i < 3000; i++) {
        (void)dl_lane_look(&lane, outer[i % 3], inner[i % 3], now);
        (void)dl_lane_look(&lane, outer[i % 3], inner[i % 3], now + 8);
        now += 10;
    }
    CHECK(lane.position <= 101 && lane.position >= -101);
}

const test_case lane_tests[] = {TEST(a_bee_that_walks_in_counts_in),
                                TEST(a_bee_that_walks_out_counts_out),
                                TEST(a_bee_that_looks_in_and_leaves_counts_nowhere),
                                TEST(a_bee_that_hesitates_at_the_inner_beam_counts_once),
                                TEST(a_bee_that_backs_out_after_nearly_passing_counts_nowhere),
                                TEST(two_bees_nose_to_tail_count_two),
                                TEST(three_bees_out_in_a_chain_count_three),
                                TEST(a_bee_faster_than_one_look_still_counts_when_one_side_was_seen),
                                TEST(both_beams_at_once_tell_no_direction),
                                TEST(a_bee_in_and_a_bee_out_count_one_each),
                                TEST(antennae_that_flicker_do_not_count),
                                TEST(a_dead_bee_blocks_the_lane_until_it_is_cleared),
                                TEST(a_lane_that_mostly_cannot_tell_is_called_flickering),
                                TEST(a_lane_in_use_asks_to_be_looked_at_more_often),
                                TEST(a_crowd_without_a_gap_never_runs_off_the_scale),
                                {NULL, NULL}};
