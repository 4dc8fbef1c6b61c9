#include "senml.h"

#include "text.h"

#include <string.h>

/* SenML's integer labels, RFC 8428 table 4. */
enum { LABEL_BASE_TIME = -3, LABEL_BASE_NAME = -2, LABEL_NAME = 0, LABEL_UNIT = 1, LABEL_VALUE = 2 };

/* One record: a name, a unit, a value as a decimal. Base fields where given. */
typedef struct record {
    const char *base_name;
    const dl_time *base_time;
    const char *name;
    const char *unit;
    bool wide; /* value is an unsigned 32-bit counter */
    uint32_t counter;
    int32_t value;
    unsigned places;
} record;

static void put(dl_pack *pack, uint8_t byte) {
    if (pack->used >= pack->size) {
        pack->overflowed = true;
        return;
    }
    pack->bytes[pack->used] = byte;
    pack->used++;
}

static void put_head(dl_pack *pack, uint8_t major, uint32_t value) {
    uint8_t type = (uint8_t)(major << 5);
    if (value < 24) {
        put(pack, (uint8_t)(type | value));
    } else if (value < 0x100u) {
        put(pack, (uint8_t)(type | 24u));
        put(pack, (uint8_t)value);
    } else if (value < 0x10000u) {
        put(pack, (uint8_t)(type | 25u));
        put(pack, (uint8_t)(value >> 8));
        put(pack, (uint8_t)value);
    } else {
        put(pack, (uint8_t)(type | 26u));
        for (int shift = 24; shift >= 0; shift -= 8) {
            put(pack, (uint8_t)(value >> shift));
        }
    }
}

static void put_integer(dl_pack *pack, int32_t value) {
    if (value >= 0) {
        put_head(pack, 0, (uint32_t)value);
    } else {
        put_head(pack, 1, (uint32_t)(-1 - (int64_t)value));
    }
}

static void put_string(dl_pack *pack, const char *words) {
    put_head(pack, 3, (uint32_t)strlen(words));
    for (; *words != '\0'; words++) {
        put(pack, (uint8_t)*words);
    }
}

/* A decimal fraction, RFC 8949 section 3.4.4: tag 4, [exponent, mantissa]. */
static void put_decimal(dl_pack *pack, int32_t value, unsigned places) {
    if (places == 0) {
        put_integer(pack, value);
        return;
    }
    put_head(pack, 6, 4);
    put_head(pack, 4, 2);
    put_integer(pack, -(int32_t)places);
    put_integer(pack, value);
}

static void cbor_record(dl_pack *pack, const record *one) {
    uint32_t fields = 3u + (one->base_name != NULL ? 1u : 0u) + (one->base_time != NULL ? 1u : 0u);
    put_head(pack, 5, fields);
    if (one->base_name != NULL) {
        put_integer(pack, LABEL_BASE_NAME);
        put_string(pack, one->base_name);
    }
    if (one->base_time != NULL) {
        put_integer(pack, LABEL_BASE_TIME);
        if (one->base_time->absolute) {
            put_head(pack, 0, one->base_time->unix_s);
        } else {
            put_integer(pack, -(int32_t)one->base_time->age_s);
        }
    }
    put_integer(pack, LABEL_NAME);
    put_string(pack, one->name);
    put_integer(pack, LABEL_UNIT);
    put_string(pack, one->unit);
    put_integer(pack, LABEL_VALUE);
    if (one->wide) {
        put_head(pack, 0, one->counter);
    } else {
        put_decimal(pack, one->value, one->places);
    }
}

static void json_record(dl_pack *pack, const record *one) {
    dl_text text;
    dl_text_begin(&text, (char *)pack->bytes + pack->used, pack->size - pack->used);
    dl_text_add(&text, pack->records == 0 ? "[{" : ",{");
    if (one->base_name != NULL) {
        dl_text_add(&text, "\"bn\":\"");
        dl_text_add(&text, one->base_name);
        dl_text_add(&text, "\",");
    }
    if (one->base_time != NULL) {
        dl_text_add(&text, "\"bt\":");
        dl_text_number(&text,
                       one->base_time->absolute ? (int64_t)one->base_time->unix_s : -(int64_t)one->base_time->age_s);
        dl_text_add(&text, ",");
    }
    dl_text_add(&text, "\"n\":\"");
    dl_text_add(&text, one->name);
    dl_text_add(&text, "\",\"u\":\"");
    dl_text_add(&text, one->unit);
    dl_text_add(&text, "\",\"v\":");
    if (one->wide) {
        dl_text_number(&text, one->counter);
    } else {
        dl_text_decimal(&text, one->value, one->places);
    }
    dl_text_add(&text, "}");
    pack->used += text.used;
    pack->overflowed = pack->overflowed || text.overflowed;
}

/* The array header of CBOR is written at the end, when the records are counted. */
#define CBOR_HEADER_ROOM 2u
#define CBOR_RECORDS_MAX 255u

void dl_pack_begin(dl_pack *pack, dl_format format, uint8_t *bytes, size_t size) {
    *pack = (dl_pack){.format = format, .bytes = bytes, .size = size};
    if (format == DL_CBOR) {
        pack->used = CBOR_HEADER_ROOM;
    } else {
        pack->size = size - 1; /* the closing bracket always finds room */
    }
}

typedef struct writer {
    dl_pack *pack;
    const char *base_name;
    const dl_time *base_time;
} writer;

static void write_record(writer *into, record one) {
    one.base_name = into->base_name;
    one.base_time = into->base_time;
    into->base_name = NULL;
    into->base_time = NULL;
    if (into->pack->format == DL_CBOR) {
        cbor_record(into->pack, &one);
    } else {
        json_record(into->pack, &one);
    }
    into->pack->records++;
}

static void write_counter(writer *into, const char *name, uint32_t value) {
    write_record(into, (record){.name = name, .unit = "count", .wide = true, .counter = value});
}

static void write_value(writer *into, const char *name, const char *unit, int32_t value, unsigned places) {
    if (value != DL_MISSING) {
        write_record(into, (record){.name = name, .unit = unit, .value = value, .places = places});
    }
}

bool dl_pack_add(dl_pack *pack, const char *base_name, const dl_sample *sample, dl_time time, uint32_t seq) {
    size_t used_before = pack->used;
    uint32_t records_before = pack->records;
    writer into = {pack, base_name, &time};
    if (sample->counted) {
        write_counter(&into, "in", sample->in);
        write_counter(&into, "out", sample->out);
    }
    if (sample->weight_g != DL_MISSING) {
        write_value(&into, "weight", "kg", sample->weight_g, 3);
        write_value(&into, "weight-sd", "kg", sample->weight_sd_g, 3);
    } else {
        write_value(&into, "load", "count", sample->load_counts, 0);
    }
    write_value(&into, "cell", "Cel", sample->cell_cc, 2);
    write_value(&into, "box", "Cel", sample->box_cc, 2);
    write_value(&into, "battery", "V", sample->battery_mv, 3);
    write_counter(&into, "boot", sample->boot);
    if (seq != 0) {
        write_counter(&into, "seq", seq);
    }
    if (pack->overflowed || (pack->format == DL_CBOR && pack->records > CBOR_RECORDS_MAX)) {
        pack->used = used_before;
        pack->records = records_before;
        pack->overflowed = false;
        return false;
    }
    return true;
}

size_t dl_pack_end(dl_pack *pack) {
    if (pack->records == 0) {
        return 0;
    }
    if (pack->format == DL_JSON) {
        pack->bytes[pack->used] = ']';
        pack->used++;
        return pack->used;
    }
    if (pack->records < 24) {
        memmove(pack->bytes + 1, pack->bytes + CBOR_HEADER_ROOM, pack->used - CBOR_HEADER_ROOM);
        pack->bytes[0] = (uint8_t)(0x80u | pack->records);
        pack->used -= 1;
    } else {
        pack->bytes[0] = 0x98;
        pack->bytes[1] = (uint8_t)pack->records;
    }
    return pack->used;
}
