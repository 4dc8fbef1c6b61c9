#include "chance.h"

#include <math.h>

chance chance_from(uint64_t seed) {
    chance chance = {seed * 0x9E3779B97F4A7C15u + 1u};
    (void)chance_bits(&chance);
    return chance;
}

uint64_t chance_bits(chance *chance) {
    chance->state ^= chance->state >> 12;
    chance->state ^= chance->state << 25;
    chance->state ^= chance->state >> 27;
    return chance->state * 0x2545F4914F6CDD1Du;
}

double chance_share(chance *chance) {
    return (double)(chance_bits(chance) >> 11) / 9007199254740992.0;
}

double chance_wait(chance *chance) {
    return -log(1.0 - chance_share(chance));
}

double chance_normal(chance *chance) {
    double radius = sqrt(2.0 * chance_wait(chance));
    return radius * cos(2.0 * 3.14159265358979323846 * chance_share(chance));
}
