#include "suites.h"

int checks_failed = 0;

int main(void) {
    const test_case *const suites[] = {lane_tests,     sensor_tests,   storage_tests, wire_tests,
                                       settings_tests, schedule_tests, node_tests,    entrance_tests};
    int passed = 0;
    int failed = 0;
    for (size_t suite = 0; suite < sizeof suites / sizeof suites[0]; suite++) {
        for (const test_case *test = suites[suite]; test->name != NULL; test++) {
            int before = checks_failed;
            test->run();
            if (checks_failed == before) {
                passed++;
            } else {
                failed++;
                printf("FAILED %s\n", test->name);
            }
        }
    }
    printf("%d passed, %d failed\n", passed, failed);
    return failed == 0 ? 0 : 1;
}
