/* Repeatable chance for the virtual entrance and the tests: the same seed, the
 * same bees. Vigna's xorshift64* (arXiv 1402.6246). */
#ifndef DUSKLINE_CHANCE_H
#define DUSKLINE_CHANCE_H

#include <stdint.h>

typedef struct chance {
    uint64_t state;
} chance;

chance chance_from(uint64_t seed);
uint64_t chance_bits(chance *chance);
/* Uniform within [0, 1). */
double chance_share(chance *chance);
/* Normal, mean 0, deviation 1. */
double chance_normal(chance *chance);
/* Exponential, mean 1. */
double chance_wait(chance *chance);

#endif
