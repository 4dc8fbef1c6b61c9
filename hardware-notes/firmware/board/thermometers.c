/* The two thermometers, each alone on one wire: who pulls it low, and for how many microseconds, is the message. */
#include "board.h"
#include "drivers.h"
#include "pins.h"

static void wire_slot(uint32_t pin, uint32_t low_us, uint32_t rest_us) {
    pin_set(GPIOA, pin, false);
    clock_wait_us(low_us);
    pin_set(GPIOA, pin, true);
    clock_wait_us(rest_us);
}

static void wire_write(uint32_t pin, uint8_t byte) {
    for (int bit = 0; bit < 8; bit++) {
        bool one = (byte >> bit & 1) != 0;
        wire_slot(pin, one ? 5u : 65u, one ? 65u : 5u);
    }
}

static uint8_t wire_read(uint32_t pin) {
    uint8_t byte = 0;
    for (int bit = 0; bit < 8; bit++) {
        wire_slot(pin, 2, 7); /* read within 15 us of the edge, the calls included */
        if (pin_is_high(GPIOA, pin)) {
            byte = (uint8_t)(byte | 1u << bit);
        }
        clock_wait_us(55);
    }
    return byte;
}

static void wire_reset(uint32_t pin) {
    wire_slot(pin, 500, 500);
}

void board_thermometer_convert(uint32_t which) {
    uint32_t pin = THERMOMETER_FIRST + (which & 1u);
    wire_reset(pin);
    wire_write(pin, 0xCC); /* to whoever is on this line */
    wire_write(pin, 0x44);
}

void board_thermometer_read(uint32_t which, uint8_t scratchpad[9]) {
    uint32_t pin = THERMOMETER_FIRST + (which & 1u);
    wire_reset(pin);
    wire_write(pin, 0xCC);
    wire_write(pin, 0xBE);
    for (int i = 0; i < 9; i++) {
        scratchpad[i] = wire_read(pin);
    }
}
