/* The suites that main.c runs; one file a part of the core. */
#ifndef DUSKLINE_SUITES_H
#define DUSKLINE_SUITES_H

#include "check.h"

extern const test_case lane_tests[];
extern const test_case sensor_tests[];
extern const test_case storage_tests[];
extern const test_case wire_tests[];
extern const test_case settings_tests[];
extern const test_case schedule_tests[];
extern const test_case node_tests[];
extern const test_case entrance_tests[];

#endif
