#include "frame.h"

#include "storage.h"

#define OVERHEAD 4u

typedef struct stuffer {
    uint8_t *bytes;
    size_t size;
    size_t used;
    size_t code_at;
    uint8_t code;
    bool overflowed;
} stuffer;

static void open_stretch(stuffer *into) {
    into->code_at = into->used;
    into->code = 1;
    if (into->used >= into->size) {
        into->overflowed = true;
        return;
    }
    into->used++;
}

static void stuff(stuffer *into, uint8_t byte) {
    if (into->overflowed) {
        return;
    }
    if (byte != 0) {
        if (into->used >= into->size) {
            into->overflowed = true;
            return;
        }
        into->bytes[into->used] = byte;
        into->used++;
        into->code++;
    }
    if (byte == 0 || into->code == 0xFF) {
        into->bytes[into->code_at] = into->code;
        open_stretch(into);
    }
}

size_t dl_frame_write(uint8_t kind, uint8_t number, const uint8_t *payload, size_t count, uint8_t *bytes, size_t size) {
    if (count > DL_FRAME_PAYLOAD_MAX) {
        return 0;
    }
    stuffer into = {.bytes = bytes, .size = size};
    open_stretch(&into);
    uint8_t head[2] = {kind, number};
    uint16_t crc = dl_crc16_more(dl_crc16(head, 2), payload, count);
    stuff(&into, kind);
    stuff(&into, number);
    for (size_t i = 0; i < count; i++) {
        stuff(&into, payload[i]);
    }
    stuff(&into, (uint8_t)crc);
    stuff(&into, (uint8_t)(crc >> 8));
    if (into.overflowed || into.used >= size) {
        return 0;
    }
    bytes[into.code_at] = into.code;
    bytes[into.used] = 0;
    return into.used + 1;
}

void dl_frame_begin(dl_frame_reader *reader) {
    reader->used = 0;
    reader->left = 0;
    reader->zero_follows = false;
    reader->spoiled = false;
}

static void keep_byte(dl_frame_reader *reader, uint8_t byte) {
    if (reader->used >= sizeof reader->bytes) {
        reader->spoiled = true;
        return;
    }
    reader->bytes[reader->used] = byte;
    reader->used++;
}

static bool complete(dl_frame_reader *reader) {
    if (reader->spoiled || reader->left != 0 || reader->used < OVERHEAD) {
        return false;
    }
    size_t body = reader->used - 2;
    uint16_t crc = (uint16_t)(reader->bytes[body] | (uint16_t)(reader->bytes[body + 1] << 8));
    if (dl_crc16(reader->bytes, body) != crc) {
        return false;
    }
    reader->kind = reader->bytes[0];
    reader->number = reader->bytes[1];
    reader->payload = reader->bytes + 2;
    reader->count = body - 2;
    return true;
}

bool dl_frame_take(dl_frame_reader *reader, uint8_t byte) {
    if (byte == 0) {
        bool good = complete(reader);
        dl_frame_begin(reader);
        return good;
    }
    if (reader->left == 0) {
        if (reader->zero_follows) {
            keep_byte(reader, 0);
        }
        reader->left = (uint8_t)(byte - 1);
        reader->zero_follows = byte != 0xFF;
    } else {
        keep_byte(reader, byte);
        reader->left--;
    }
    return false;
}
