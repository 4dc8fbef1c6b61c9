/* Which pin does what (the notes have the drawing), and how a pin is switched and read:
 *   PA0 outer receivers   PA1 inner receivers   PA3 battery divider
 *   PA4 converter clock   PA5 converter data    PA6, PA7 thermometers
 *   PA8 carrier power     PA9, PA10 carrier line PA15 FRAM select
 *   PB0-PB2 lane select   PB3-PB5 FRAM           PB12 lamps of the selected lane
 * In the header, so that a switch is one store and no call: the thermometers' slots leave no time for more. */
#ifndef DUSKLINE_PINS_H
#define DUSKLINE_PINS_H

#include "registers.h"

#include <stdbool.h>

#define CONVERTER_CLOCK 4u
#define CONVERTER_DATA 5u
#define THERMOMETER_FIRST 6u
#define CARRIER_POWER 8u
#define CARRIER_SENDS 9u
#define CARRIER_RECEIVES 10u
#define FRAM_SELECT 15u
#define LAMPS 12u

typedef enum pin_mode { PIN_INPUT, PIN_OUTPUT, PIN_ALTERNATE, PIN_ANALOG } pin_mode;

static inline void pin_set(uint32_t port, uint32_t pin, bool high) {
    GPIO_BSRR(port) = 1u << (high ? pin : pin + 16u);
}

static inline bool pin_is_high(uint32_t port, uint32_t pin) {
    return (GPIO_IDR(port) >> pin & 1u) != 0;
}

static inline void pin_use_as(uint32_t port, uint32_t pin, pin_mode mode) {
    GPIO_MODER(port) = (GPIO_MODER(port) & ~(3u << (2u * pin))) | (uint32_t)mode << (2u * pin);
}

/* Puts all pins to their uses, each at the level that leaves what hangs on it at rest. */
void pins_start(void);

#endif
