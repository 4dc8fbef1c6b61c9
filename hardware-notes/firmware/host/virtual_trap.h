/* What the sensors of a virtual node stand in: a trap on its invented days, with bees that walk through its entrance
 * and a load cell that its box hangs on. The firmware sees beams, words and temperatures; the trap knows the truth. */
#ifndef DUSKLINE_VIRTUAL_TRAP_H
#define DUSKLINE_VIRTUAL_TRAP_H

#include "entrance.h"
#include "node.h"
#include "trap_days.h"

/* What the load cell's converter says of nothing, and of a kilogram more. */
#define VIRTUAL_ZERO_COUNTS 81234
#define VIRTUAL_COUNTS_PER_KG 42000

typedef struct virtual_trap {
    trap_days days;
    entrance entrance;
    chance chance;
} virtual_trap;

/* Everything happens as `seed` has it: the same seed, the same days. */
virtual_trap virtual_trap_open(const trap_days *days, uint32_t lanes, uint64_t seed);

/* How long to let pass until the next look, in ms. */
uint32_t virtual_trap_stride(const virtual_trap *trap);

/* Lets bees come and walk for `span_ms`, at `now_ms` since the start. */
void virtual_trap_pass(virtual_trap *trap, uint64_t now_ms, uint32_t span_ms);

/* The converter's next 24-bit word; one in a hundred is disturbed. */
uint32_t virtual_trap_word(virtual_trap *trap);

dl_readings virtual_trap_readings(const virtual_trap *trap, uint64_t now_ms);

#endif
