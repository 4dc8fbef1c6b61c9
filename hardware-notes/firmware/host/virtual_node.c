/* A virtual node: the firmware's core between a virtual entrance, a virtual load
 * cell and a real broker. Days pass in seconds; the samples carry their own times. */
#include "carrier.h"
#include "entrance.h"
#include "file_storage.h"
#include "node.h"
#include "trap_days.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define LOOK_MS 2u
#define WINDOW_READINGS 24
#define ZERO_COUNTS 81234
#define COUNTS_PER_KG 42000
#define BEE_KG 0.00013
#define STORAGE_BYTES (DL_KEEP_BYTES + 4096u * DL_BACKLOG_SLOT_BYTES)

typedef struct options {
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
    bool clock;
    const char *storage;
    const char *truth;
} options;

typedef struct virtual_node {
    options options;
    dl_storage storage;
    dl_node node;
    carrier *carrier;
    entrance entrance;
    chance chance;
    uint64_t now_ms;     /* since the virtual start */
    uint64_t started_ms; /* of this run of the firmware */
    FILE *truth;
    uint32_t packs;
} virtual_node;

static uint64_t running_ms(const virtual_node *self) {
    return self->now_ms - self->started_ms;
}

/* The invented days have a time of their own; whoever minds the nodes' clocks would move them into today. */
static void keep_own_clock(virtual_node *self) {
    if (self->options.clock) {
        uint32_t unix_s = self->options.days.begins_unix_s + (uint32_t)(self->now_ms / 1000u);
        dl_node_set_clock(&self->node, unix_s, running_ms(self));
    }
}

static void power_up(virtual_node *self) {
    dl_identity identity = {.format = self->options.format,
                            .lanes = self->options.lanes,
                            .battery_low_mv = 3400,
                            .battery_recovered_mv = 3600,
                            .calibration = {ZERO_COUNTS, COUNTS_PER_KG}};
    (void)snprintf(identity.base_name, sizeof identity.base_name,
                   "urn:dev:mac:02a1c0fffe%06llx:", (unsigned long long)(self->options.seed & 0xFFFFFFu));
    self->started_ms = self->now_ms;
    dl_node_start(&self->node, &identity, &self->storage);
    keep_own_clock(self);
}

static void acknowledge(virtual_node *self, const char *bytes, size_t length) {
    if (length > 0 && !carrier_send(self->carrier, "settings/ack", bytes, length, true)) {
        (void)fprintf(stderr, "the acknowledgement of the settings did not reach the broker\n");
    }
}

/* What is in force, said without a message to answer: after a connection and after a tare. */
static void report(virtual_node *self) {
    char reply[DL_ACKNOWLEDGEMENT_BYTES];
    acknowledge(self, reply, dl_node_report(&self->node, running_ms(self), reply, sizeof reply));
}

typedef struct inbox {
    char payload[DL_SETTINGS_BYTES_MAX + 1];
    size_t count;
    bool live;
    bool full;
} inbox;

static inbox received;

static void keep_settings(void *context, const char *payload, size_t count, bool live) {
    inbox *into = context;
    into->count = count < sizeof into->payload ? count : sizeof into->payload;
    if (payload != NULL) {
        memcpy(into->payload, payload, into->count);
    }
    into->live = live;
    into->full = true;
}

static void listen(virtual_node *self, int wait_ms) {
    carrier_listen(self->carrier, wait_ms);
    if (!received.full) {
        return;
    }
    received.full = false;
    char reply[DL_ACKNOWLEDGEMENT_BYTES];
    size_t length = dl_node_settings(&self->node, received.payload, received.count, received.live, running_ms(self),
                                     reply, sizeof reply);
    keep_own_clock(self);
    acknowledge(self, reply, length);
}

static bool in_reach(const virtual_node *self) {
    double hour = (double)self->now_ms / 3600000.0;
    return hour < self->options.silent_from_h || hour >= self->options.silent_from_h + self->options.silent_for_h;
}

static void send_waiting(virtual_node *self) {
    uint8_t bytes[1000];
    for (;;) {
        size_t length = dl_node_pack(&self->node, bytes, sizeof bytes, running_ms(self));
        if (length == 0) {
            return;
        }
        if (!carrier_send(self->carrier, "readings", bytes, length, false)) {
            (void)fprintf(stderr, "a pack did not reach the broker; it stays stored\n");
            return;
        }
        dl_node_pack_taken(&self->node);
        self->packs++;
    }
}

static void weigh(virtual_node *self) {
    double bees = (double)self->entrance.passed_in - (double)self->entrance.passed_out;
    double kg = self->options.days.box_kg + bees * BEE_KG;
    for (int i = 0; i < WINDOW_READINGS; i++) {
        double counts = ZERO_COUNTS + COUNTS_PER_KG * kg + 60.0 * chance_normal(&self->chance);
        if (chance_share(&self->chance) < 0.01) {
            counts += 200000.0;
        }
        dl_node_weigh(&self->node, (uint32_t)(int32_t)lround(counts) & 0xFFFFFFu);
    }
}

static void write_truth(const virtual_node *self, const dl_sample *sample) {
    if (self->truth != NULL) {
        (void)fprintf(self->truth, "%u,%u,%u,%u,%.3f,%u,%u\n",
                      sample->unix_s != 0 ? sample->unix_s
                                          : self->options.days.begins_unix_s + (uint32_t)(self->now_ms / 1000u),
                      sample->boot, sample->in, sample->out, (double)sample->weight_g / 1000.0,
                      self->entrance.passed_in, self->entrance.passed_out);
    }
}

static void take_sample(virtual_node *self) {
    double seconds = (double)self->now_ms / 1000.0;
    weigh(self);
    dl_readings readings = {(int32_t)lround(100.0 * trap_air_c(&self->options.days, seconds)),
                            (int32_t)lround(100.0 * trap_box_c(&self->options.days, seconds)), 3900};
    bool taring = self->node.tare_wanted;
    dl_sample sample;
    bool send = dl_node_sample(&self->node, &readings, running_ms(self), &sample);
    write_truth(self, &sample);
    listen(self, 0);
    if (in_reach(self) && (send || dl_backlog_waiting(&self->node.backlog) > DL_SAMPLES_A_PACK)) {
        send_waiting(self);
    }
    if (taring && !self->node.tare_wanted) {
        report(self);
    }
    if (self->options.speed > 0) {
        uint32_t due = dl_node_due_in_s(&self->node, running_ms(self));
        listen(self, (int)(due * 1000.0 / self->options.speed));
    }
}

static void let_bees_come(virtual_node *self, double seconds, uint32_t span_ms) {
    traffic traffic = trap_traffic(&self->options.days, seconds);
    double span_s = span_ms / 1000.0;
    if (chance_share(&self->chance) < traffic.in_per_s * span_s) {
        entrance_arrive(&self->entrance, true);
    }
    if (chance_share(&self->chance) < traffic.out_per_s * span_s) {
        entrance_arrive(&self->entrance, false);
    }
}

static void look(virtual_node *self) {
    for (uint32_t lane = 0; lane < self->options.lanes; lane++) {
        bool outer;
        bool inner;
        entrance_beams(&self->entrance, (int)lane, &outer, &inner);
        (void)dl_node_look(&self->node, lane, outer, inner, running_ms(self));
    }
}

/* While nobody is in a lane the beams need no look every two milliseconds. */
static uint32_t stride(const virtual_node *self) {
    return entrance_crowd(&self->entrance) > 0 ? LOOK_MS : 20u;
}

static void run(virtual_node *self) {
    uint64_t ends_ms = (uint64_t)(self->options.hours * 3600000.0);
    uint64_t next_sample_ms = 0;
    bool restarted = self->options.restart_h <= 0;
    while (self->now_ms < ends_ms) {
        if (!restarted && (double)self->now_ms >= self->options.restart_h * 3600000.0) {
            restarted = true;
            power_up(self);
            report(self);
            next_sample_ms = self->now_ms;
        }
        if (self->now_ms >= next_sample_ms) {
            take_sample(self);
            next_sample_ms = self->now_ms + (uint64_t)dl_node_due_in_s(&self->node, running_ms(self)) * 1000u;
        }
        uint32_t span_ms = stride(self);
        let_bees_come(self, (double)self->now_ms / 1000.0, span_ms);
        entrance_walk(&self->entrance, span_ms);
        look(self);
        self->now_ms += span_ms;
    }
    self->options.silent_for_h = 0;
    send_waiting(self);
}

static int usage(void) {
    (void)fputs(
        "virtual_node --port P --node NAME [--host H] [--root traps] [--format json|cbor]\n"
        "  [--begin UNIX_SECONDS] [--hours 48] [--zone HOURS] [--arrival LOCAL_HOURS|-1] [--bees 11000]\n"
        "  [--rush SECONDS] [--lanes 8] [--seed 1] [--speed 0] [--no-clock] [--silent FROM_H FOR_H]\n"
        "  [--restart AT_H] [--storage FILE] [--truth FILE] [--user NAME --password-file FILE] [--linger SECONDS]\n"
        "Publishes the invented days of one trap through a real broker. --arrival 37.2 lets a swarm move in\n"
        "37.2 hours after the first local midnight; --speed 0 runs as fast as it can.\n",
        stderr);
    return 2;
}

static const char *first_line(const char *path) {
    static char line[128];
    FILE *file = fopen(path, "r");
    if (file == NULL || fgets(line, sizeof line, file) == NULL) {
        (void)fprintf(stderr, "no password in %s\n", path);
        exit(2);
    }
    (void)fclose(file);
    line[strcspn(line, "\r\n")] = '\0';
    return line;
}

static double number(const char *words) {
    return strtod(words, NULL);
}

/* Returns how many words the option took, 0 when it is unknown. */
static int take_option(options *options, char **words, int left, double *linger_s) {
    const char *name = words[0];
    if (strcmp(name, "--no-clock") == 0) {
        options->clock = false;
        return 1;
    }
    if (left < 2) {
        return 0;
    }
    const char *value = words[1];
    struct {
        const char *name;
        const char **text;
    } texts[] = {{"--host", &options->address.host}, {"--node", &options->address.node},
                 {"--root", &options->address.root}, {"--user", &options->address.user},
                 {"--storage", &options->storage},   {"--truth", &options->truth}};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (strcmp(name, texts[i].name) == 0) {
            *texts[i].text = value;
            return 2;
        }
    }
    struct {
        const char *name;
        double *number;
    } numbers[] = {{"--hours", &options->hours},          {"--speed", &options->speed},
                   {"--zone", &options->days.zone_hours}, {"--arrival", &options->days.arrival_hour},
                   {"--bees", &options->days.swarm_bees}, {"--rush", &options->days.rush_s},
                   {"--restart", &options->restart_h},    {"--linger", linger_s}};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        if (strcmp(name, numbers[i].name) == 0) {
            *numbers[i].number = number(value);
            return 2;
        }
    }
    if (strcmp(name, "--port") == 0) {
        options->address.port = (int)number(value);
    } else if (strcmp(name, "--begin") == 0) {
        options->days.begins_unix_s = (uint32_t)number(value);
    } else if (strcmp(name, "--lanes") == 0) {
        options->lanes = (uint32_t)number(value);
    } else if (strcmp(name, "--seed") == 0) {
        options->seed = (uint64_t)number(value);
    } else if (strcmp(name, "--format") == 0) {
        options->format = strcmp(value, "cbor") == 0 ? DL_CBOR : DL_JSON;
    } else if (strcmp(name, "--password-file") == 0) {
        options->address.password = first_line(value);
    } else if (strcmp(name, "--silent") == 0 && left >= 3) {
        options->silent_from_h = number(value);
        options->silent_for_h = number(words[2]);
        return 3;
    } else {
        return 0;
    }
    return 2;
}

static options defaults(void) {
    return (options){.address = {.host = "127.0.0.1", .port = 1883, .root = "traps"},
                     .days = {.begins_unix_s = (uint32_t)time(NULL) - 48u * 3600u,
                              .arrival_hour = -1,
                              .swarm_bees = 11000,
                              .rush_s = 1200,
                              .box_kg = 12.0},
                     .seed = 1,
                     .lanes = 8,
                     .hours = 48,
                     .silent_from_h = 1e9,
                     .clock = true,
                     .storage = "virtual-node.store"};
}

int main(int count, char **words) {
    options options = defaults();
    double linger_s = 0;
    for (int i = 1; i < count;) {
        int taken = take_option(&options, words + i, count - i, &linger_s);
        if (taken == 0) {
            return usage();
        }
        i += taken;
    }
    if (options.address.node == NULL || options.lanes == 0 || options.lanes > DL_LANES_MAX) {
        return usage();
    }
    static virtual_node self;
    self.options = options;
    self.storage = file_storage_open(options.storage, STORAGE_BYTES);
    if (self.storage.context == NULL) {
        (void)fprintf(stderr, "cannot open or make the storage file %s\n", options.storage);
        return 1;
    }
    self.truth = options.truth != NULL ? fopen(options.truth, "w") : NULL;
    if (self.truth != NULL) {
        (void)fputs("unix_s,boot,in,out,weight_kg,true_in,true_out\n", self.truth);
    }
    self.entrance = entrance_open((int)options.lanes, entrance_usual_habits(), options.seed);
    self.chance = chance_from(options.seed + 77);
    power_up(&self);
    self.carrier = carrier_open(&options.address, keep_settings, &received);
    if (self.carrier == NULL) {
        return 1;
    }
    listen(&self, 200);
    report(&self);
    run(&self);
    for (double waited = 0; waited < linger_s; waited += 0.1) {
        listen(&self, 100);
    }
    (void)printf("%s: %u packs, boot %u, %u bees in and %u out, %u samples left to send\n", options.address.node,
                 self.packs, self.node.kept.boot, self.entrance.passed_in, self.entrance.passed_out,
                 dl_backlog_waiting(&self.node.backlog));
    carrier_close(self.carrier);
    if (self.truth != NULL) {
        (void)fclose(self.truth);
    }
    file_storage_close(&self.storage);
    return 0;
}
