#include "text.h"

void dl_text_begin(dl_text *text, char *bytes, size_t size) {
    *text = (dl_text){.bytes = bytes, .size = size};
}

static void add_character(dl_text *text, char character) {
    if (text->used >= text->size) {
        text->overflowed = true;
        return;
    }
    text->bytes[text->used] = character;
    text->used++;
}

void dl_text_add(dl_text *text, const char *words) {
    for (; *words != '\0'; words++) {
        add_character(text, *words);
    }
}

static void add_digits(dl_text *text, uint64_t value) {
    char digits[20];
    unsigned count = 0;
    do {
        digits[count] = (char)('0' + (char)(value % 10u));
        count++;
        value /= 10u;
    } while (value != 0);
    while (count > 0) {
        count--;
        add_character(text, digits[count]);
    }
}

void dl_text_number(dl_text *text, int64_t value) {
    if (value < 0) {
        add_character(text, '-');
        add_digits(text, (uint64_t)0 - (uint64_t)value);
    } else {
        add_digits(text, (uint64_t)value);
    }
}

void dl_text_decimal(dl_text *text, int32_t value, unsigned places) {
    static const uint32_t powers[] = {1u, 10u, 100u, 1000u};
    const uint32_t power = powers[places & 3u];
    uint64_t magnitude = value < 0 ? (uint64_t)(-(int64_t)value) : (uint64_t)value;
    if (value < 0) {
        add_character(text, '-');
    }
    add_digits(text, magnitude / power);
    uint64_t fraction = magnitude % power;
    if (fraction == 0) {
        return;
    }
    add_character(text, '.');
    for (unsigned i = 0; i < places && fraction != 0; i++) {
        fraction *= 10u;
        // cppcheck-suppress zerodivcond; the least power in the table is 1
        add_character(text, (char)('0' + (char)(fraction / power)));
        fraction %= power;
    }
}
