#include "flat_json.h"

#include <string.h>

enum { AT_START, IN_RECORD, AFTER_FIELD, AFTER_RECORD, AT_END, AT_BREAK };

/* Exponents beyond this cannot give a whole number within 64 bits. */
#define EXPONENT_MAX 400

static void skip_space(dl_json_reader *reader) {
    while (reader->at < reader->end &&
           (*reader->at == ' ' || *reader->at == '\t' || *reader->at == '\n' || *reader->at == '\r')) {
        reader->at++;
    }
}

static char next_character(dl_json_reader *reader) {
    skip_space(reader);
    return reader->at < reader->end ? *reader->at : '\0';
}

static bool take(dl_json_reader *reader, char wanted) {
    if (reader->at >= reader->end || next_character(reader) != wanted) {
        return false;
    }
    reader->at++;
    return true;
}

static bool read_string(dl_json_reader *reader, dl_json_value *value) {
    if (!take(reader, '"')) {
        return false;
    }
    value->kind = DL_JSON_STRING;
    value->words = reader->at;
    value->escaped = false;
    while (reader->at < reader->end && *reader->at != '"') {
        if ((unsigned char)*reader->at < 0x20u) {
            return false;
        }
        if (*reader->at == '\\') {
            value->escaped = true;
            reader->at++;
            if (reader->at >= reader->end) {
                return false;
            }
        }
        reader->at++;
    }
    if (reader->at >= reader->end) {
        return false;
    }
    value->length = (size_t)(reader->at - value->words);
    reader->at++;
    return true;
}

static bool is_digit(const dl_json_reader *reader) {
    return reader->at < reader->end && *reader->at >= '0' && *reader->at <= '9';
}

/* Collects digits into `number`; `lost` when they no longer fit 18 places. */
static unsigned read_digits(dl_json_reader *reader, int64_t *number, bool *lost) {
    unsigned count = 0;
    for (; is_digit(reader); reader->at++) {
        if (*number > 99999999999999999) {
            *lost = true;
        } else {
            *number = *number * 10 + (*reader->at - '0');
        }
        count++;
    }
    return count;
}

static bool read_exponent(dl_json_reader *reader, int *exponent) {
    reader->at++;
    bool negative = false;
    if (reader->at < reader->end && (*reader->at == '+' || *reader->at == '-')) {
        negative = *reader->at == '-';
        reader->at++;
    }
    int64_t size = 0;
    bool lost = false;
    if (read_digits(reader, &size, &lost) == 0) {
        return false;
    }
    int bounded = lost || size > EXPONENT_MAX ? EXPONENT_MAX : (int)size;
    *exponent += negative ? -bounded : bounded;
    return true;
}

static void scale(dl_json_value *value, int exponent, bool lost) {
    for (; exponent < 0 && value->number % 10 == 0 && value->number != 0; exponent++) {
        value->number /= 10;
    }
    for (; exponent > 0 && value->number <= INT64_MAX / 10 && value->number != 0; exponent--) {
        value->number *= 10;
    }
    value->whole = !lost && (exponent == 0 || value->number == 0);
}

static bool read_number(dl_json_reader *reader, dl_json_value *value) {
    bool negative = take(reader, '-');
    value->kind = DL_JSON_NUMBER;
    value->number = 0;
    bool lost = false;
    int exponent = 0;
    bool leading_zero = is_digit(reader) && *reader->at == '0';
    unsigned digits = read_digits(reader, &value->number, &lost);
    if (digits == 0 || (leading_zero && digits > 1)) {
        return false;
    }
    if (reader->at < reader->end && *reader->at == '.') {
        reader->at++;
        unsigned places = read_digits(reader, &value->number, &lost);
        if (places == 0) {
            return false;
        }
        exponent = places > EXPONENT_MAX ? -EXPONENT_MAX : -(int)places;
    }
    if (reader->at < reader->end && (*reader->at == 'e' || *reader->at == 'E') && !read_exponent(reader, &exponent)) {
        return false;
    }
    scale(value, exponent, lost);
    value->number = negative ? -value->number : value->number;
    return true;
}

static bool read_word(dl_json_reader *reader, const char *word) {
    size_t length = strlen(word);
    if ((size_t)(reader->end - reader->at) < length || memcmp(reader->at, word, length) != 0) {
        return false;
    }
    reader->at += length;
    return true;
}

static bool read_value(dl_json_reader *reader, dl_json_value *value) {
    switch (next_character(reader)) {
    case '"':
        return read_string(reader, value);
    case 't':
        value->kind = DL_JSON_TRUTH;
        value->truth = true;
        return read_word(reader, "true");
    case 'f':
        value->kind = DL_JSON_TRUTH;
        value->truth = false;
        return read_word(reader, "false");
    case 'n':
        value->kind = DL_JSON_NULL;
        return read_word(reader, "null");
    default:
        return read_number(reader, value);
    }
}

void dl_json_begin(dl_json_walk *walk, const char *bytes, size_t count) {
    *walk = (dl_json_walk){.reader = {bytes, bytes + count}, .state = AT_START};
}

static dl_json_event broken(dl_json_walk *walk) {
    walk->state = AT_BREAK;
    return DL_JSON_BROKEN;
}

static dl_json_event read_field(dl_json_walk *walk) {
    dl_json_reader *reader = &walk->reader;
    if (!read_string(reader, &walk->key) || !take(reader, ':') || !read_value(reader, &walk->value)) {
        return broken(walk);
    }
    walk->state = AFTER_FIELD;
    return DL_JSON_FIELD;
}

static dl_json_event end_record(dl_json_walk *walk) {
    walk->state = AFTER_RECORD;
    return DL_JSON_RECORD_END;
}

static dl_json_event end_array(dl_json_walk *walk) {
    if (!take(&walk->reader, ']')) {
        return broken(walk);
    }
    skip_space(&walk->reader);
    if (walk->reader.at != walk->reader.end) {
        return broken(walk);
    }
    walk->state = AT_END;
    return DL_JSON_DONE;
}

static dl_json_event open_record(dl_json_walk *walk) {
    if (!take(&walk->reader, '{')) {
        return broken(walk);
    }
    walk->state = IN_RECORD;
    return DL_JSON_RECORD;
}

dl_json_event dl_json_next(dl_json_walk *walk) {
    dl_json_reader *reader = &walk->reader;
    switch (walk->state) {
    case AT_START:
        if (!take(reader, '[')) {
            return broken(walk);
        }
        return next_character(reader) == ']' ? end_array(walk) : open_record(walk);
    case IN_RECORD:
        return take(reader, '}') ? end_record(walk) : read_field(walk);
    case AFTER_FIELD:
        if (take(reader, ',')) {
            return read_field(walk);
        }
        return take(reader, '}') ? end_record(walk) : broken(walk);
    case AFTER_RECORD:
        return take(reader, ',') ? open_record(walk) : end_array(walk);
    case AT_END:
        return DL_JSON_DONE;
    default:
        return DL_JSON_BROKEN;
    }
}

bool dl_json_is(const dl_json_value *value, const char *words) {
    size_t length = strlen(words);
    return value->kind == DL_JSON_STRING && !value->escaped && value->length == length &&
           memcmp(value->words, words, length) == 0;
}
