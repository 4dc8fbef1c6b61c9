#include "check.h"
#include "flat_json.h"
#include "settings.h"
#include "suites.h"

static dl_kept defaults(void) {
    return (dl_kept){.period_s = 120, .quick_period_s = 30};
}

static const char *fault_of(const char *pack) {
    dl_settings settings;
    dl_kept kept = defaults();
    const char *fault = dl_settings_read(&settings, &kept, pack, strlen(pack));
    return fault == NULL ? "none" : fault;
}

static void check_fault(const char *pack, const char *fault) {
    const char *found = fault_of(pack);
    CHECK_TEXT(found, strlen(found), fault);
}

static void the_example_of_the_contract_is_read(void) {
    static const char pack[] =
        "[{\"n\":\"rev\",\"u\":\"count\",\"v\":7},{\"n\":\"period\",\"u\":\"s\",\"v\":60},\n"
        " {\"n\":\"quick-period\",\"u\":\"s\",\"v\":20},{\"n\":\"quick\",\"vs\":\"on\"},\n"
        " {\"n\":\"tare\",\"u\":\"count\",\"v\":2},{\"n\":\"time\",\"u\":\"s\",\"v\":1777888800}]";
    dl_settings settings;
    dl_kept kept = defaults();
    CHECK(dl_settings_read(&settings, &kept, pack, strlen(pack)) == NULL);
    CHECK_NUMBER(settings.revision, 7);
    CHECK_NUMBER(settings.unix_s, 1777888800);
    CHECK(!dl_settings_apply(&settings, &kept));
    CHECK_NUMBER(kept.period_s, 60);
    CHECK_NUMBER(kept.quick_period_s, 20);
    CHECK(kept.quick == DL_QUICK_ON);
    CHECK_NUMBER(kept.tare, 2);
}

static void numbers_come_in_every_json_spelling(void) {
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"time\",\"v\":1.7778888E9},{\"n\":\"period\",\"v\":6e1}]", "none");
    check_fault("[{\"n\":\"rev\",\"v\":1.0},{\"n\":\"period\",\"v\":600e-1}]", "none");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":60.5}]", "period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":1e999999999999}]", "period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":-60}]", "period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":060}]", "payload");
}

static void a_value_out_of_range_names_itself(void) {
    check_fault("[{\"n\":\"rev\",\"v\":0}]", "rev");
    check_fault("[{\"n\":\"rev\",\"v\":2147483648}]", "rev");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":9}]", "period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":3601}]", "period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"quick-period\",\"v\":4}]", "quick-period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"quick\",\"vs\":\"sometimes\"}]", "quick");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"quick\",\"v\":1}]", "quick");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":-1}]", "tare");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"time\",\"v\":946684800}]", "time");
    check_fault("[{\"n\":\"period\",\"v\":60}]", "rev");
}

static void a_quick_period_longer_than_the_quiet_one_is_refused(void) {
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":20}]", "quick-period");
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"period\",\"v\":20},{\"n\":\"quick-period\",\"v\":20}]", "none");
}

static void unknown_names_are_passed_over_and_the_last_of_two_counts(void) {
    check_fault("[{\"n\":\"rev\",\"v\":1},{\"n\":\"colour\",\"vs\":\"green\"},{\"n\":\"a\",\"vb\":true,\"x\":null}]",
                "none");
    static const char pack[] = "[{\"n\":\"rev\",\"v\":1},{\"n\":\"rev\",\"v\":5}]";
    dl_settings settings;
    dl_kept kept = defaults();
    CHECK(dl_settings_read(&settings, &kept, pack, strlen(pack)) == NULL);
    CHECK_NUMBER(settings.revision, 5);
}

static void what_is_no_pack_changes_nothing(void) {
    static const char *const broken[] = {"",
                                         "[",
                                         "[{]",
                                         "{}",
                                         "[{}",
                                         "null",
                                         "[{\"n\"}]",
                                         "[[{\"n\":1}]]",
                                         "[{\"n\":{}}]",
                                         "[{\"n\":\"a\\",
                                         "[{},]",
                                         "[{}] x",
                                         "[{\"n\":tru}]",
                                         "[{\"v\":1.}]",
                                         "[{\"v\":1e}]",
                                         "[{\"v\":-}]",
                                         "[{\"n\":\"a\nb\"}]"};
    for (size_t i = 0; i < sizeof broken / sizeof broken[0]; i++) {
        check_fault(broken[i], "payload");
    }
    check_fault("[]", "rev");
    check_fault(" [ { } ] ", "rev");
}

static void too_much_is_refused(void) {
    char pack[700];
    memset(pack, ' ', sizeof pack);
    memcpy(pack, "[{\"n\":\"rev\",\"v\":1}]", 19);
    dl_settings settings;
    dl_kept kept = defaults();
    CHECK(dl_settings_read(&settings, &kept, pack, 512) == NULL);
    CHECK(dl_settings_read(&settings, &kept, pack, 513) != NULL);
    check_fault("[{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{\"n\":\"rev\",\"v\":1}]", "payload");
}

static void a_spare_board_takes_the_first_tare_number_without_taring(void) {
    dl_settings settings = {.revision = 1, .has_tare = true, .tare = 4};
    dl_kept kept = defaults();
    CHECK(!dl_settings_apply(&settings, &kept));
    CHECK(kept.tare_known);
    settings.tare = 5;
    CHECK(dl_settings_apply(&settings, &kept));
    CHECK_NUMBER(kept.tare, 4);
}

static void the_acknowledgement_is_the_contracts_example(void) {
    dl_kept kept = defaults();
    kept.revision = 7;
    kept.tare_known = true;
    kept.tare = 2;
    kept.zero_counts = 81234;
    dl_state_report report = {.base_name = "urn:dev:mac:02a1c0fffe000007:", .lanes = 8, .unix_s = 1777888801};
    char bytes[DL_ACKNOWLEDGEMENT_BYTES];
    size_t length = dl_settings_acknowledge(&kept, &report, bytes, sizeof bytes);
    CHECK_TEXT(bytes, length,
               "[{\"bn\":\"urn:dev:mac:02a1c0fffe000007:\",\"n\":\"rev\",\"u\":\"count\",\"v\":7},"
               "{\"n\":\"period\",\"u\":\"s\",\"v\":120},{\"n\":\"quick-period\",\"u\":\"s\",\"v\":30},"
               "{\"n\":\"quick\",\"vs\":\"auto\"},{\"n\":\"quick-now\",\"vb\":false},"
               "{\"n\":\"tare\",\"u\":\"count\",\"v\":2},{\"n\":\"zero\",\"u\":\"count\",\"v\":81234},"
               "{\"n\":\"lanes\",\"u\":\"count\",\"v\":8},{\"n\":\"lanes-faulty\",\"u\":\"count\",\"v\":0},"
               "{\"n\":\"stored\",\"u\":\"count\",\"v\":0},{\"n\":\"clock\",\"u\":\"s\",\"v\":1777888801}]");
    CHECK_NUMBER(dl_settings_acknowledge(&kept, &report, bytes, 40), 0);
}

static void the_longest_acknowledgement_fits(void) {
    dl_kept kept = {.revision = UINT32_MAX,
                    .period_s = UINT32_MAX,
                    .quick_period_s = UINT32_MAX,
                    .tare_known = true,
                    .tare = UINT32_MAX,
                    .zero_counts = -INT32_MAX};
    dl_state_report report = {"urn:dev:mac:02a1c0fffe000007:a-longer-name-yet:",
                              "quick-period",
                              false,
                              UINT32_MAX,
                              UINT32_MAX,
                              UINT32_MAX,
                              UINT32_MAX};
    char bytes[DL_ACKNOWLEDGEMENT_BYTES];
    CHECK(dl_settings_acknowledge(&kept, &report, bytes, sizeof bytes) > 0);
}

const test_case settings_tests[] = {TEST(the_example_of_the_contract_is_read),
                                    TEST(numbers_come_in_every_json_spelling),
                                    TEST(a_value_out_of_range_names_itself),
                                    TEST(a_quick_period_longer_than_the_quiet_one_is_refused),
                                    TEST(unknown_names_are_passed_over_and_the_last_of_two_counts),
                                    TEST(what_is_no_pack_changes_nothing),
                                    TEST(too_much_is_refused),
                                    TEST(a_spare_board_takes_the_first_tare_number_without_taring),
                                    TEST(the_acknowledgement_is_the_contracts_example),
                                    TEST(the_longest_acknowledgement_fits),
                                    {NULL, NULL}};
