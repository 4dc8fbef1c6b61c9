#include "carrier.h"

#include <mosquitto.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TOPIC_BYTES 160
#define ACKNOWLEDGED_WITHIN_MS 20000

struct carrier {
    struct mosquitto *client;
    char prefix[TOPIC_BYTES]; /* root/node/ */
    carrier_settings *settings;
    void *context;
    bool connected;
    bool refused;
    int acknowledged;
};

static void topic_of(const carrier *carrier, const char *what, char *topic) {
    (void)snprintf(topic, TOPIC_BYTES + 16, "%s%s", carrier->prefix, what);
}

static void on_connect(struct mosquitto *client, void *context, int code) {
    (void)client;
    carrier *carrier = context;
    carrier->connected = code == 0;
    carrier->refused = code != 0;
}

static void on_publish(struct mosquitto *client, void *context, int message) {
    (void)client;
    ((carrier *)context)->acknowledged = message;
}

static void on_message(struct mosquitto *client, void *context, const struct mosquitto_message *message) {
    (void)client;
    carrier *carrier = context;
    carrier->settings(carrier->context, message->payload, (size_t)message->payloadlen, !message->retain);
}

static bool connected(carrier *carrier, const carrier_address *address) {
    char status[TOPIC_BYTES + 16];
    topic_of(carrier, "status", status);
    (void)mosquitto_will_set(carrier->client, status, 7, "offline", 1, true);
    if (address->user != NULL) {
        (void)mosquitto_username_pw_set(carrier->client, address->user, address->password);
    }
    int code = mosquitto_connect(carrier->client, address->host, address->port, 60);
    if (code != MOSQ_ERR_SUCCESS) {
        (void)fprintf(stderr, "cannot reach the broker at %s:%d (%s); is it running?\n", address->host, address->port,
                      mosquitto_strerror(code));
        return false;
    }
    for (int tries = 0; tries < 200 && !carrier->connected && !carrier->refused; tries++) {
        (void)mosquitto_loop(carrier->client, 50, 1);
    }
    if (!carrier->connected) {
        (void)fprintf(stderr, "the broker at %s:%d did not let node %s in; check user and password\n", address->host,
                      address->port, address->node);
        return false;
    }
    char settings[TOPIC_BYTES + 16];
    topic_of(carrier, "settings", settings);
    (void)mosquitto_subscribe(carrier->client, NULL, settings, 1);
    return carrier_send(carrier, "status", "online", 6, true);
}

carrier *carrier_open(const carrier_address *address, carrier_settings *settings, void *context) {
    carrier *carrier = calloc(1, sizeof *carrier);
    if (carrier == NULL) {
        return NULL;
    }
    (void)mosquitto_lib_init();
    (void)snprintf(carrier->prefix, sizeof carrier->prefix, "%s/%s/", address->root, address->node);
    carrier->settings = settings;
    carrier->context = context;
    carrier->client = mosquitto_new(address->node, true, carrier);
    if (carrier->client == NULL) {
        free(carrier);
        return NULL;
    }
    mosquitto_connect_callback_set(carrier->client, on_connect);
    mosquitto_publish_callback_set(carrier->client, on_publish);
    mosquitto_message_callback_set(carrier->client, on_message);
    if (!connected(carrier, address)) {
        carrier_close(carrier);
        return NULL;
    }
    return carrier;
}

bool carrier_send(carrier *carrier, const char *what, const void *bytes, size_t count, bool retained) {
    char topic[TOPIC_BYTES + 16];
    topic_of(carrier, what, topic);
    int message = 0;
    carrier->acknowledged = 0;
    if (mosquitto_publish(carrier->client, &message, topic, (int)count, bytes, 1, retained) != MOSQ_ERR_SUCCESS) {
        return false;
    }
    for (int waited = 0; waited < ACKNOWLEDGED_WITHIN_MS && carrier->acknowledged != message; waited += 50) {
        if (mosquitto_loop(carrier->client, 50, 1) != MOSQ_ERR_SUCCESS) {
            return false;
        }
    }
    return carrier->acknowledged == message;
}

void carrier_listen(carrier *carrier, int wait_ms) {
    (void)mosquitto_loop(carrier->client, wait_ms, 1);
}

void carrier_close(carrier *carrier) {
    if (carrier->connected) {
        (void)carrier_send(carrier, "status", "offline", 7, true);
        (void)mosquitto_disconnect(carrier->client);
    }
    mosquitto_destroy(carrier->client);
    (void)mosquitto_lib_cleanup();
    free(carrier);
}
