/* Without libFuzzer: a bounded, repeatable stream of mutations of a few seeds. */
#include "chance.h"

#include <stdint.h>
#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

#define INPUT_MAX 1200u

static const char *const SEEDS[] = {"\x05[{\"n\":\"rev\",\"v\":7},{\"n\":\"period\",\"v\":120},{\"n\":\"quick\",\"vs\":"
                                    "\"auto\"},{\"n\":\"tare\",\"v\":2}]",
                                    "\x01\x02\x03\x04\x05", "\x02kept", "\x03\x01\x03\x02\x01\x03\x02",
                                    "\x04\x91\x01\x4B\x46\x7F\xFF\x0F\x10"};

int main(void) {
    chance chance = chance_from(99);
    uint8_t input[INPUT_MAX];
    for (int round = 0; round < 200000; round++) {
        const char *seed = SEEDS[chance_bits(&chance) % 5];
        size_t size = strlen(seed);
        memcpy(input, seed, size);
        while (size < INPUT_MAX && chance_share(&chance) < 0.9) {
            input[size] = (uint8_t)chance_bits(&chance);
            size++;
        }
        for (int change = 0; change < 4; change++) {
            input[1 + chance_bits(&chance) % (size - 1)] = (uint8_t)chance_bits(&chance);
        }
        (void)LLVMFuzzerTestOneInput(input, size);
    }
    printf("200000 inputs, none failed\n");
    return 0;
}
