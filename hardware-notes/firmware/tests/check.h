/* A test program in a few lines: CHECK counts, prints what failed and goes on. */
#ifndef DUSKLINE_CHECK_H
#define DUSKLINE_CHECK_H

#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

extern int checks_failed;

#define CHECK(condition)                                                                                               \
    do {                                                                                                               \
        if (!(condition)) {                                                                                            \
            checks_failed++;                                                                                           \
            printf("    %s:%d: not so: %s\n", __FILE__, __LINE__, #condition);                                         \
        }                                                                                                              \
    } while (0)

#define CHECK_NUMBER(actual, expected)                                                                                 \
    do {                                                                                                               \
        long long is_ = (long long)(actual);                                                                           \
        long long should_ = (long long)(expected);                                                                     \
        if (is_ != should_) {                                                                                          \
            checks_failed++;                                                                                           \
            printf("    %s:%d: %s is %lld, should be %lld\n", __FILE__, __LINE__, #actual, is_, should_);              \
        }                                                                                                              \
    } while (0)

#define CHECK_TEXT(actual, length, expected)                                                                           \
    do {                                                                                                               \
        size_t length_ = (length);                                                                                     \
        if (length_ != strlen(expected) || memcmp((actual), (expected), length_) != 0) {                               \
            checks_failed++;                                                                                           \
            printf("    %s:%d: is     %.*s\n        should be %s\n", __FILE__, __LINE__, (int)length_,                 \
                   (const char *)(actual), (expected));                                                                \
        }                                                                                                              \
    } while (0)

#define CHECK_NEAR(actual, expected, tolerance)                                                                        \
    do {                                                                                                               \
        double is_ = (actual);                                                                                         \
        double should_ = (expected);                                                                                   \
        if (!(fabs(is_ - should_) <= (tolerance))) {                                                                   \
            checks_failed++;                                                                                           \
            printf("    %s:%d: %s is %.9g, should be %.9g\n", __FILE__, __LINE__, #actual, is_, should_);              \
        }                                                                                                              \
    } while (0)

typedef struct test_case {
    const char *name;
    void (*run)(void);
} test_case;

#define TEST(name)                                                                                                     \
    { #name, name }

#endif
