#include "pins.h"

void pins_start(void) {
    for (uint32_t pin = 0; pin < 3; pin++) {
        pin_use_as(GPIOB, pin, PIN_OUTPUT);
        pin_use_as(GPIOB, pin + 3u, PIN_ALTERNATE);
    }
    pin_use_as(GPIOB, LAMPS, PIN_OUTPUT);
    pin_use_as(GPIOA, CONVERTER_CLOCK, PIN_OUTPUT);
    pin_set(GPIOA, CONVERTER_CLOCK, true);
    pin_use_as(GPIOA, CONVERTER_DATA, PIN_INPUT);
    GPIO_OTYPER(GPIOA) |= 3u << THERMOMETER_FIRST;
    pin_set(GPIOA, THERMOMETER_FIRST, true);
    pin_set(GPIOA, THERMOMETER_FIRST + 1u, true);
    pin_use_as(GPIOA, THERMOMETER_FIRST, PIN_OUTPUT);
    pin_use_as(GPIOA, THERMOMETER_FIRST + 1u, PIN_OUTPUT);
    pin_use_as(GPIOA, CARRIER_POWER, PIN_OUTPUT);
    GPIO_AFRH(GPIOA) = (GPIO_AFRH(GPIOA) & ~0xFF0u) | 0x440u;
    pin_set(GPIOA, FRAM_SELECT, true);
    pin_use_as(GPIOA, FRAM_SELECT, PIN_OUTPUT);
}
