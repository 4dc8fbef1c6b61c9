/* Frames between the board and whatever carries its messages (a gateway, a radio
 * module): a kind, a number, up to 1000 bytes, a checksum; packed by consistent
 * overhead byte stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking
 * 7(2), 1999), so that a zero byte always and only ends a frame. */
#ifndef DUSKLINE_FRAME_H
#define DUSKLINE_FRAME_H

#include "values.h"

#define DL_FRAME_PAYLOAD_MAX 1000u
/* Kind, number, payload, checksum, one stuffed byte in 254, the first code, the end. */
#define DL_FRAME_BYTES_MAX (2u + DL_FRAME_PAYLOAD_MAX + 2u + 4u + 2u)

typedef enum dl_frame_kind {
    DL_FRAME_READINGS = 1,        /* node to gateway: publish */
    DL_FRAME_ACKNOWLEDGEMENT = 2, /* node to gateway: publish on settings/ack */
    DL_FRAME_TAKEN = 3,           /* gateway to node: readings `number` are with the broker */
    DL_FRAME_SETTINGS_LIVE = 4,   /* gateway to node: settings as just published */
    DL_FRAME_SETTINGS_STORED = 5, /* gateway to node: settings from the broker's store */
    DL_FRAME_TIME = 6             /* gateway to node: Unix seconds, four bytes, lowest first */
} dl_frame_kind;

/* Returns the length with the closing zero, 0 when it does not fit. */
size_t dl_frame_write(uint8_t kind, uint8_t number, const uint8_t *payload, size_t count, uint8_t *bytes, size_t size);

typedef struct dl_frame_reader {
    uint8_t bytes[2u + DL_FRAME_PAYLOAD_MAX + 2u];
    size_t used;
    uint8_t left; /* bytes of the present stretch still to come */
    bool zero_follows;
    bool spoiled; /* too long or out of step: skip to the next zero */
    uint8_t kind;
    uint8_t number;
    const uint8_t *payload;
    size_t count;
} dl_frame_reader;

void dl_frame_begin(dl_frame_reader *reader);

/* Takes one byte from the line. Returns true when a good frame is complete: then
 * kind, number, payload and count hold it until the next byte. */
bool dl_frame_take(dl_frame_reader *reader, uint8_t byte);

#endif
