/* A virtual node: the firmware's core between a virtual trap and a real broker. Days
 * pass in seconds; the samples carry their own times. */
#include "carrier.h"
#include "file_storage.h"
#include "node.h"
#include "virtual_options.h"
#include "virtual_trap.h"

#include <stdio.h>
#include <string.h>

#define WINDOW_READINGS 24
#define STORAGE_BYTES (DL_KEEP_BYTES + 4096u * DL_BACKLOG_SLOT_BYTES)

/* Settings that have arrived and wait until the node looks. */
typedef struct inbox {
    char payload[DL_SETTINGS_BYTES_MAX + 1];
    size_t count;
    bool live;
    bool full;
} inbox;

typedef struct virtual_node {
    virtual_options options;
    dl_storage storage;
    dl_node node;
    carrier *carrier;
    inbox received;
    virtual_trap trap;
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
                            .calibration = {VIRTUAL_ZERO_COUNTS, VIRTUAL_COUNTS_PER_KG}};
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
    if (!self->received.full) {
        return;
    }
    self->received.full = false;
    char reply[DL_ACKNOWLEDGEMENT_BYTES];
    size_t length = dl_node_settings(&self->node, self->received.payload, self->received.count, self->received.live,
                                     running_ms(self), reply, sizeof reply);
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
    for (int i = 0; i < WINDOW_READINGS; i++) {
        dl_node_weigh(&self->node, virtual_trap_word(&self->trap));
    }
}

static void write_truth(const virtual_node *self, const dl_sample *sample) {
    if (self->truth != NULL) {
        (void)fprintf(self->truth, "%u,%u,%u,%u,%.3f,%u,%u\n",
                      sample->unix_s != 0 ? sample->unix_s
                                          : self->options.days.begins_unix_s + (uint32_t)(self->now_ms / 1000u),
                      sample->boot, sample->in, sample->out, (double)sample->weight_g / 1000.0,
                      self->trap.entrance.passed_in, self->trap.entrance.passed_out);
    }
}

static void take_sample(virtual_node *self) {
    weigh(self);
    dl_readings readings = virtual_trap_readings(&self->trap, self->now_ms);
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

static void look(virtual_node *self) {
    for (uint32_t lane = 0; lane < self->options.lanes; lane++) {
        bool outer;
        bool inner;
        entrance_beams(&self->trap.entrance, (int)lane, &outer, &inner);
        (void)dl_node_look(&self->node, lane, outer, inner, running_ms(self));
    }
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
        uint32_t span_ms = virtual_trap_stride(&self->trap);
        virtual_trap_pass(&self->trap, self->now_ms, span_ms);
        look(self);
        self->now_ms += span_ms;
    }
    self->options.silent_for_h = 0;
    send_waiting(self);
}

static bool open_files(virtual_node *self) {
    self->storage = file_storage_open(self->options.storage, STORAGE_BYTES);
    if (self->storage.context == NULL) {
        (void)fprintf(stderr, "cannot open or make the storage file %s\n", self->options.storage);
        return false;
    }
    self->truth = self->options.truth != NULL ? fopen(self->options.truth, "w") : NULL;
    if (self->truth != NULL) {
        (void)fputs("unix_s,boot,in,out,weight_kg,true_in,true_out\n", self->truth);
    }
    return true;
}

static void close_files(virtual_node *self) {
    if (self->truth != NULL) {
        (void)fclose(self->truth);
    }
    file_storage_close(&self->storage);
}

static void linger(virtual_node *self) {
    for (double waited = 0; waited < self->options.linger_s; waited += 0.1) {
        listen(self, 100);
    }
}

static void sum_up(const virtual_node *self) {
    (void)printf("%s: %u packs, boot %u, %u bees in and %u out, %u samples left to send\n", self->options.address.node,
                 self->packs, self->node.kept.boot, self->trap.entrance.passed_in, self->trap.entrance.passed_out,
                 dl_backlog_waiting(&self->node.backlog));
}

int main(int count, char **words) {
    static virtual_node self;
    if (!virtual_options_read(&self.options, count, words)) {
        return 2;
    }
    if (!open_files(&self)) {
        return 1;
    }
    self.trap = virtual_trap_open(&self.options.days, self.options.lanes, self.options.seed);
    power_up(&self);
    self.carrier = carrier_open(&self.options.address, keep_settings, &self.received);
    if (self.carrier == NULL) {
        return 1;
    }
    listen(&self, 200);
    report(&self);
    run(&self);
    linger(&self);
    sum_up(&self);
    carrier_close(self.carrier);
    close_files(&self);
    return 0;
}
