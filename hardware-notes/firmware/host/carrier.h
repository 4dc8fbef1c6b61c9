/* The virtual node's way to a broker: MQTT through libmosquitto, one thread. */
#ifndef DUSKLINE_CARRIER_H
#define DUSKLINE_CARRIER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct carrier_address {
    const char *host;
    int port;
    const char *root;
    const char *node;
    const char *user;     /* NULL = none */
    const char *password; /* NULL = none */
} carrier_address;

typedef struct carrier carrier;

/* Settings as they arrive; `live` false when from the broker's store. */
typedef void carrier_settings(void *context, const char *payload, size_t count, bool live);

/* Connects with the last will `offline`, says `online`, asks for the settings.
 * NULL with a message on standard error when that fails. */
carrier *carrier_open(const carrier_address *address, carrier_settings *settings, void *context);

/* Publishes and waits for the broker's acknowledgement. `what` is "readings" or
 * "settings/ack". False when none came within 20 s. */
bool carrier_send(carrier *carrier, const char *what, const void *bytes, size_t count, bool retained);

/* Lets arrived messages in, waiting at most `wait_ms`. */
void carrier_listen(carrier *carrier, int wait_ms);

void carrier_close(carrier *carrier);

#endif
