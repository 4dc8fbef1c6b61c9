/* What the microcontroller's own converter measures: light in the lanes, the battery. */
#include "board.h"
#include "drivers.h"
#include "pins.h"

/* Times that the converter takes in: 7.5 and 160.5 of its cycles; the reference needs 10 us. */
#define ADC_FAST 2u
#define ADC_SLOW 7u
#define REFERENCE_CHANNEL 17u
#define NOMINAL_SUPPLY_MV 3300u

void analog_start(void) {
    ADC_CFGR2 = 1u << 30;
    ADC_SMPR = ADC_FAST;
    ADC_CR = 1u << 31;
    while ((ADC_CR & 1u << 31) != 0) {
    }
}

static int32_t convert(uint32_t channel) {
    ADC_CHSELR = 1u << channel;
    ADC_CR |= 4u;
    while ((ADC_ISR & 4u) == 0) {
    }
    return (int32_t)(ADC_DR & 0xFFFu);
}

static void converter_ready(bool on) {
    if (!on) {
        ADC_CR |= 2u;
        while ((ADC_CR & 1u) != 0) {
        }
        return;
    }
    ADC_ISR = 1u;
    ADC_CR |= 1u;
    while ((ADC_ISR & 1u) == 0) {
    }
}

board_light board_look_at_lane(uint32_t lane) {
    board_light light;
    GPIO_BSRR(GPIOB) = 7u << 16 | (lane & 7u);
    converter_ready(true);
    clock_wait_us(10);
    light.outer_dark = convert(0);
    light.inner_dark = convert(1);
    pin_set(GPIOB, LAMPS, true);
    clock_wait_us(30);
    light.outer_lit = convert(0);
    light.inner_lit = convert(1);
    pin_set(GPIOB, LAMPS, false);
    converter_ready(false);
    return light;
}

/* The converter measures against the supply, which falls with a battery that is nearly empty or of a low voltage: the
 * built-in reference tells how far. */
static uint32_t supply_mv(void) {
    SYSCFG_CFGR3 |= 1u;
    while ((SYSCFG_CFGR3 & 1u << 30) == 0) {
    }
    SYSCFG_CFGR3 |= 1u << 8;
    ADC_CCR |= 1u << 22;
    ADC_SMPR = ADC_SLOW;
    clock_wait_us(20);
    uint32_t code = (uint32_t)convert(REFERENCE_CHANNEL);
    ADC_SMPR = ADC_FAST;
    ADC_CCR &= ~(1u << 22);
    SYSCFG_CFGR3 &= ~(1u << 8 | 1u);
    return code == 0 ? NOMINAL_SUPPLY_MV : 3000u * REFERENCE_CODE_AT_3000_MV / code;
}

int32_t board_battery_code(void) {
    converter_ready(true);
    uint32_t code = (uint32_t)convert(3) * supply_mv() / NOMINAL_SUPPLY_MV;
    converter_ready(false);
    return (int32_t)code;
}
