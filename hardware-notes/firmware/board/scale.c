/* The load cell's bridge converter: a clock that we beat, a line on which a bit falls with each beat. */
#include "board.h"
#include "drivers.h"
#include "pins.h"

void board_scale_on(void) {
    pin_set(GPIOA, CONVERTER_CLOCK, false);
}

/* Held high for more than 60 us, the clock line sends the converter to sleep. */
void board_scale_off(void) {
    pin_set(GPIOA, CONVERTER_CLOCK, true);
}

bool board_scale_ready(void) {
    return !pin_is_high(GPIOA, CONVERTER_DATA);
}

uint32_t board_scale_read(void) {
    uint32_t word = 0;
    for (int pulse = 0; pulse < 25; pulse++) { /* the 25th chooses channel A, gain 128 */
        pin_set(GPIOA, CONVERTER_CLOCK, true);
        clock_wait_us(1);
        pin_set(GPIOA, CONVERTER_CLOCK, false);
        if (pulse < 24) {
            word = word << 1 | (pin_is_high(GPIOA, CONVERTER_DATA) ? 1u : 0u);
        }
        clock_wait_us(1);
    }
    return word;
}
