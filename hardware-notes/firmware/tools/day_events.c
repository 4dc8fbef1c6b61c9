/* Runs the firmware's own schedule through whole days and prints how often it
 * looked, sampled and sent: what the energy table multiplies with currents. */
#include "entrance.h"
#include "memory.h"
#include "node.h"
#include "trap_days.h"

#include <stdio.h>

#define LANES 8
/* As in board/node_main.c. */
#define LOOK_BUSY_MS 2u
#define LOOK_QUIET_MS 20u
#define BUSY_FOR_MS 1000u
#define DAY_MS 86400000u

typedef struct day_events {
    uint32_t looks;
    uint32_t samples;
    uint32_t sends;
    uint32_t passings;
} day_events;

typedef struct runner {
    memory memory;
    dl_storage storage;
    dl_node node;
    entrance entrance;
    chance chance;
    trap_days days;
} runner;

static bool look(runner *self, uint64_t now_ms) {
    bool busy = false;
    for (int lane = 0; lane < LANES; lane++) {
        bool outer;
        bool inner;
        entrance_beams(&self->entrance, lane, &outer, &inner);
        busy = dl_node_look(&self->node, (uint32_t)lane, outer, inner, now_ms) || busy;
    }
    return busy;
}

static bool sample(runner *self, uint64_t now_ms) {
    double bees = (double)self->entrance.passed_in - (double)self->entrance.passed_out;
    int32_t counts = 81234 + (int32_t)(42000.0 * (12.0 + bees * 0.00013));
    for (int i = 0; i < 24; i++) {
        dl_node_weigh(&self->node, (uint32_t)(counts + (i % 3) * 40) & 0xFFFFFFu);
    }
    dl_readings readings = {2000, 2000, 3900};
    dl_sample taken;
    bool send = dl_node_sample(&self->node, &readings, now_ms, &taken);
    dl_backlog_acknowledge(&self->node.backlog, taken.serial);
    return send;
}

static void arrive(runner *self, uint64_t now_ms, uint32_t span_ms) {
    traffic traffic = trap_traffic(&self->days, (double)now_ms / 1000.0);
    if (chance_share(&self->chance) < traffic.in_per_s * span_ms / 1000.0) {
        entrance_arrive(&self->entrance, true);
    }
    if (chance_share(&self->chance) < traffic.out_per_s * span_ms / 1000.0) {
        entrance_arrive(&self->entrance, false);
    }
}

/* One day from `day` on, counting only that day. */
static day_events run(double arrival_hour, uint32_t day) {
    static runner self;
    self = (runner){.entrance = entrance_open(LANES, entrance_usual_habits(), 5), .chance = chance_from(6)};
    self.days = (trap_days){.arrival_hour = arrival_hour, .swarm_bees = 11000, .rush_s = 1200, .box_kg = 12};
    self.storage = memory_storage(&self.memory, MEMORY_BYTES);
    dl_identity identity = {
        .lanes = LANES, .battery_low_mv = 3100, .battery_recovered_mv = 3250, .calibration = {81234, 42000}};
    dl_node_start(&self.node, &identity, &self.storage);
    day_events events = {0};
    uint64_t busy_until_ms = 0;
    uint32_t before = 0;
    for (uint64_t now_ms = 0; now_ms < (uint64_t)(day + 1) * DAY_MS;) {
        bool counts = now_ms >= (uint64_t)day * DAY_MS;
        if (!counts) {
            before = self.entrance.passed_in + self.entrance.passed_out;
        }
        if (dl_node_due_in_s(&self.node, now_ms) == 0) {
            events.sends += sample(&self, now_ms) && counts ? 1u : 0u;
            events.samples += counts ? 1u : 0u;
        }
        if (look(&self, now_ms)) {
            busy_until_ms = now_ms + BUSY_FOR_MS;
        }
        events.looks += counts ? 1u : 0u;
        uint32_t span_ms = now_ms < busy_until_ms ? LOOK_BUSY_MS : LOOK_QUIET_MS;
        arrive(&self, now_ms, span_ms);
        entrance_walk(&self.entrance, span_ms);
        now_ms += span_ms;
    }
    events.passings = self.entrance.passed_in + self.entrance.passed_out - before;
    return events;
}

static void print(const char *name, day_events events) {
    printf("%s,%u,%u,%u,%u\n", name, events.passings, events.looks, events.samples, events.sends);
}

int main(void) {
    printf("day,passings,looks,samples,sends\n");
    print("nobody comes", run(-1, 0));
    print("scouted all day", run(25.0, 0));
    print("a swarm arrives at 13:00", run(13.0, 0));
    print("a colony lives in it (second day)", run(13.0, 1));
    return 0;
}
