/* The gateway: frames from a node's serial line (a cable, or a pair of radios that
 * carry one) to a broker, and back the word that a pack was taken, the settings and
 * the time. Runs on any small Linux machine; one gateway process a node. */
#include "carrier.h"
#include "frame.h"
#include "settings.h"
#include "storage.h"

#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

typedef struct gateway {
    int line;
    carrier *carrier;
    dl_frame_reader reader;
    char settings[DL_SETTINGS_BYTES_MAX + 1];
    size_t settings_count;
    bool settings_waiting; /* not yet acknowledged by the node */
    bool settings_sent;
} gateway;

static volatile sig_atomic_t stopped;

static void stop(int signal) {
    (void)signal;
    stopped = 1;
}

static int open_line(const char *path) {
    int line = open(path, O_RDWR | O_NOCTTY);
    struct termios settings;
    if (line < 0 || tcgetattr(line, &settings) != 0) {
        (void)fprintf(stderr, "cannot open %s; is the cable plugged in, and may this user read it?\n", path);
        return -1;
    }
    /* Raw bytes, eight bits, no parity; a read waits at most a tenth of a second. */
    settings.c_iflag = 0;
    settings.c_oflag = 0;
    settings.c_lflag = 0;
    settings.c_cflag = CS8 | CREAD | CLOCAL;
    settings.c_cc[VMIN] = 0;
    settings.c_cc[VTIME] = 1;
    (void)cfsetispeed(&settings, B115200);
    (void)cfsetospeed(&settings, B115200);
    if (tcsetattr(line, TCSANOW, &settings) != 0) {
        (void)fprintf(stderr, "%s takes no 115200 baud\n", path);
        return -1;
    }
    return line;
}

static void write_frame(const gateway *self, dl_frame_kind kind, uint8_t number, const void *payload, size_t count) {
    uint8_t frame[DL_FRAME_BYTES_MAX];
    size_t length = dl_frame_write((uint8_t)kind, number, payload, count, frame, sizeof frame);
    for (size_t written = 0; written < length;) {
        ssize_t more = write(self->line, frame + written, length - written);
        if (more <= 0) {
            (void)fprintf(stderr, "the line to the node does not take bytes\n");
            return;
        }
        written += (size_t)more;
    }
}

/* The node hears only after it has spoken. Settings have aged by then, so they go
 * as stored ones, and the time goes by itself, from this machine's clock. A frame can
 * be lost on the way, so settings go again with each answer until the node has acknowledged some. */
static void answer(gateway *self) {
    uint8_t now[4];
    dl_put32(now, (uint32_t)time(NULL));
    write_frame(self, DL_FRAME_TIME, 0, now, sizeof now);
    if (self->settings_waiting) {
        self->settings_sent = true;
        write_frame(self, DL_FRAME_SETTINGS_STORED, 0, self->settings, self->settings_count);
    }
}

static void take_frame(gateway *self) {
    if (self->reader.kind == DL_FRAME_READINGS) {
        if (carrier_send(self->carrier, "readings", self->reader.payload, self->reader.count, false)) {
            write_frame(self, DL_FRAME_TAKEN, self->reader.number, NULL, 0);
            answer(self);
        } else {
            /* The node keeps what nobody took. A new start connects anew. */
            (void)fprintf(stderr, "the broker did not take a pack; stopping, the node sends it again\n");
            stopped = 1;
        }
    } else if (self->reader.kind == DL_FRAME_ACKNOWLEDGEMENT) {
        if (self->settings_sent) {
            self->settings_waiting = false;
        }
        (void)carrier_send(self->carrier, "settings/ack", self->reader.payload, self->reader.count, true);
        answer(self);
    }
}

static void keep_settings(void *context, const char *payload, size_t count, bool live) {
    (void)live;
    gateway *self = context;
    if (count == 0 || count > DL_SETTINGS_BYTES_MAX) {
        return;
    }
    memcpy(self->settings, payload, count);
    self->settings_count = count;
    self->settings_waiting = true;
    self->settings_sent = false;
}

static void run(gateway *self) {
    while (!stopped) {
        uint8_t bytes[256];
        ssize_t count = read(self->line, bytes, sizeof bytes);
        if (count < 0) {
            (void)fprintf(stderr, "the line to the node is gone\n");
            return;
        }
        for (ssize_t i = 0; i < count; i++) {
            if (dl_frame_take(&self->reader, bytes[i])) {
                take_frame(self);
            }
        }
        carrier_listen(self->carrier, 0);
    }
}

int main(int count, char **words) {
    if (count < 5) {
        (void)fputs("gateway LINE BROKER_HOST PORT NODE [ROOT [USER PASSWORD_FILE]]\n"
                    "  for example: gateway /dev/ttyUSB0 127.0.0.1 1883 n07\n",
                    stderr);
        return 2;
    }
    static gateway self;
    char password[128] = "";
    carrier_address address = {
        words[2], (int)strtol(words[3], NULL, 10), count > 5 ? words[5] : "traps", words[4], NULL, NULL};
    if (count > 7) {
        FILE *file = fopen(words[7], "r");
        if (file == NULL || fgets(password, sizeof password, file) == NULL) {
            (void)fprintf(stderr, "no password in %s\n", words[7]);
            return 2;
        }
        (void)fclose(file);
        password[strcspn(password, "\r\n")] = '\0';
        address.user = words[6];
        address.password = password;
    }
    struct sigaction on_stop = {.sa_handler = stop};
    (void)sigaction(SIGTERM, &on_stop, NULL);
    (void)sigaction(SIGINT, &on_stop, NULL);
    self.line = open_line(words[1]);
    dl_frame_begin(&self.reader);
    self.carrier = self.line >= 0 ? carrier_open(&address, keep_settings, &self) : NULL;
    if (self.carrier == NULL) {
        return 1;
    }
    run(&self);
    carrier_close(self.carrier);
    (void)close(self.line);
    return 1;
}
