/* What a virtual node is told on its command line: where to publish, which days to
 * invent, what goes wrong on them. */
#ifndef DUSKLINE_VIRTUAL_OPTIONS_H
#define DUSKLINE_VIRTUAL_OPTIONS_H

#include "carrier.h"
#include "node.h"
#include "trap_days.h"

typedef struct virtual_options {
    carrier_address address;
    trap_days days;
    dl_format format;
    uint64_t seed;
    uint32_t lanes;
    double hours;
    double speed; /* virtual seconds in a real one, 0 = as fast as it goes */
    double silent_from_h;
    double silent_for_h;
    double restart_h;
    double linger_s; /* how long it goes on listening after the last day */
    bool clock;
    const char *storage;
    const char *truth;
} virtual_options;

/* Takes the words of a command line. False when they make no sense, after saying on standard error which do. */
bool virtual_options_read(virtual_options *options, int count, char **words);

#endif
