/* The node: ties the parts of the core together between the board, which brings
 * readings, and the carrier, which takes packs away. The board calls in; nothing
 * here waits, sleeps or touches a pin. */
#ifndef DUSKLINE_NODE_H
#define DUSKLINE_NODE_H

#include "backlog.h"
#include "lane.h"
#include "schedule.h"
#include "senml.h"
#include "settings.h"
#include "weighing.h"

#define DL_LANES_MAX 12u

typedef struct dl_identity {
    char base_name[DL_BASE_NAME_BYTES]; /* urn:dev:mac:<16 hex digits>: (RFC 9039) */
    dl_format format;
    uint32_t lanes; /* 0 = no counter fitted */
    int32_t battery_low_mv;
    int32_t battery_recovered_mv;
    dl_calibration calibration; /* taken over when its counts_per_kg is not the kept one */
} dl_identity;

/* What the board measured for one sample; DL_MISSING where not fitted or failed. */
typedef struct dl_readings {
    int32_t cell_cc;
    int32_t box_cc;
    int32_t battery_mv;
} dl_readings;

typedef struct dl_node {
    dl_identity identity;
    const dl_storage *storage;
    dl_kept kept;
    dl_backlog backlog;
    dl_schedule schedule;
    dl_battery battery;
    dl_window window;
    dl_lane lanes[DL_LANES_MAX];
    bool lane_ails[DL_LANES_MAX]; /* what the board says of its light: too dirty, or dazzled */
    uint32_t elapsed_before_s;    /* powered seconds in earlier runs */
    uint32_t first_serial;        /* first sample of this run */
    uint32_t seq;
    uint32_t in_flight_up_to; /* serial that the pack on its way reaches, 0 = none */
    bool tare_wanted;
    uint32_t tare_number;
    bool clock_set;
    uint32_t clock_unix_s; /* the clock, as of clock_elapsed_s */
    uint32_t clock_elapsed_s;
} dl_node;

/* Starts or restarts: reads what earlier runs left, raises the boot number. */
void dl_node_start(dl_node *node, const dl_identity *identity, const dl_storage *storage);

/* All times below are milliseconds since this start. */

void dl_node_set_clock(dl_node *node, uint32_t unix_s, uint64_t now_ms);
/* Unix seconds, 0 without a clock. */
uint32_t dl_node_clock(const dl_node *node, uint64_t now_ms);

/* One look at a lane; true while it is in use. */
bool dl_node_look(dl_node *node, uint32_t lane, bool outer_broken, bool inner_broken, uint64_t now_ms);

/* The board's word on a lane's light, until it says otherwise. */
void dl_node_lane_ails(dl_node *node, uint32_t lane, bool ails);

uint32_t dl_node_due_in_s(const dl_node *node, uint64_t now_ms);

/* One converter word towards the next sample; a few dozen make a window. */
void dl_node_weigh(dl_node *node, uint32_t converter_word);

/* Closes the window and stores a sample. `take` receives it. Returns true when it
 * is time to send. */
bool dl_node_sample(dl_node *node, const dl_readings *readings, uint64_t now_ms, dl_sample *taken);

/* Writes the oldest waiting samples, as many as fit, and remembers how far they
 * reach. Returns the length, 0 when nothing waits. `size` >= DL_PACK_BYTES_MIN. */
size_t dl_node_pack(dl_node *node, uint8_t *bytes, size_t size, uint64_t now_ms);

/* The receiver has the pack: forget its samples. */
void dl_node_pack_taken(dl_node *node);

/* Settings as they arrived; `live` false when they came from the broker's store.
 * Writes the acknowledgement; returns its length, 0 for an empty payload. */
size_t dl_node_settings(dl_node *node, const char *payload, size_t count, bool live, uint64_t now_ms, char *bytes,
                        size_t size);

/* The acknowledgement as after a connection or a tare. */
size_t dl_node_report(const dl_node *node, uint64_t now_ms, char *bytes, size_t size);

uint32_t dl_node_faulty_lanes(const dl_node *node, uint64_t now_ms);

#endif
