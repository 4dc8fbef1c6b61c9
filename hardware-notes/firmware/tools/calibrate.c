/* Two readings with known weights in, the two numbers for the board's settings out. */
#include "weighing.h"

#include <stdio.h>
#include <stdlib.h>

int main(int count, char **words) {
    if (count != 5) {
        (void)fputs("calibrate COUNTS_LOW GRAMS_LOW COUNTS_HIGH GRAMS_HIGH\n", stderr);
        return 2;
    }
    int32_t numbers[4];
    for (int i = 0; i < 4; i++) {
        char *end;
        long value = strtol(words[i + 1], &end, 10);
        if (*end != '\0' || value > INT32_MAX || value < -INT32_MAX) {
            (void)fprintf(stderr, "%s is no whole number\n", words[i + 1]);
            return 2;
        }
        numbers[i] = (int32_t)value;
    }
    dl_calibration calibration;
    if (!dl_calibrate(&calibration, numbers[0], numbers[1], numbers[2], numbers[3])) {
        (void)fputs(
            "the two readings are too close: use weights at least 5 kg apart, and see that the load reaches the cell\n",
            stderr);
        return 1;
    }
    (void)printf("#define NODE_ZERO_COUNTS %d\n#define NODE_COUNTS_PER_KG %d\n", (int)calibration.zero_counts,
                 (int)calibration.counts_per_kg);
    return 0;
}
