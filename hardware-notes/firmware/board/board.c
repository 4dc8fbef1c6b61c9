/* Pins (the notes have the drawing):
 *   PA0 outer receivers   PA1 inner receivers   PA3 battery divider
 *   PA4 converter clock   PA5 converter data    PA6, PA7 thermometers
 *   PA8 carrier power     PA9, PA10 carrier line PA15 FRAM select
 *   PB0-PB2 lane select   PB3-PB5 FRAM           PB12 lamps of the selected lane */
#include "board.h"

#include "registers.h"

#define CONVERTER_CLOCK 4u
#define CONVERTER_DATA 5u
#define THERMOMETER_FIRST 6u
#define CARRIER_POWER 8u
#define FRAM_SELECT 15u
#define LAMPS 12u

#define FRAM_WRITE_ENABLE 0x06u
#define FRAM_WRITE 0x02u
#define FRAM_READ 0x03u
#define FRAM_SLEEP 0xB9u
/* Data sheets of such chips give 400 to 450. */
#define FRAM_WAKES_WITHIN_US 500u

/* Times that the converter takes in: 7.5 and 160.5 of its cycles; the reference needs 10 us. */
#define ADC_FAST 2u
#define ADC_SLOW 7u
#define REFERENCE_CHANNEL 17u
#define NOMINAL_SUPPLY_MV 3300u

#define CRYSTAL_HZ 32768u
#define CYCLES_A_MICROSECOND 16u
#define CYCLES_LAST 0xFFFFFFu

#define CRYSTAL_TURN 0x10000u
#define CRYSTAL_LAST 0xFFFFu

#define INCOMING_BYTES 256u

static volatile uint32_t crystal_turns;
static volatile uint8_t incoming[INCOMING_BYTES];
static volatile uint32_t incoming_in;
static uint32_t incoming_out;

void board_crystal_alarm(void);
void board_carrier_byte(void);

void board_crystal_alarm(void) {
    if ((LPTIM1_ISR & 2u) != 0) {
        crystal_turns++;
    }
    LPTIM1_ICR = 3u;
}

/* A byte that comes when the room is full is lost; its frame fails its checksum. */
void board_carrier_byte(void) {
    if ((USART1_ISR & 1u << 5) != 0) {
        uint8_t byte = (uint8_t)USART1_RDR;
        if (incoming_in - incoming_out < INCOMING_BYTES) {
            incoming[incoming_in % INCOMING_BYTES] = byte;
            incoming_in++;
        }
    }
    USART1_ICR = 1u << 3;
}

static void set_pin(uint32_t port, uint32_t pin, bool high) {
    GPIO_BSRR(port) = 1u << (high ? pin : pin + 16u);
}

static bool pin_is_high(uint32_t port, uint32_t pin) {
    return (GPIO_IDR(port) >> pin & 1u) != 0;
}

/* Mode 0 input, 1 output, 2 alternate function, 3 analog. */
static void set_mode(uint32_t port, uint32_t pin, uint32_t mode) {
    GPIO_MODER(port) = (GPIO_MODER(port) & ~(3u << (2u * pin))) | mode << (2u * pin);
}

/* By the core's timer: how long a loop takes depends on the flash's wait states, and the thermometers' slots do not
 * forgive it. */
static void wait_us(uint32_t microseconds) {
    uint32_t begin = SYST_CVR;
    while (((begin - SYST_CVR) & CYCLES_LAST) < microseconds * CYCLES_A_MICROSECOND) {
    }
}

static void start_clocks(void) {
    RCC_IOPENR |= 3u;
    FLASH_ACR |= 1u; /* one wait state: 16 MHz at the core voltage after reset is too fast for none */
    while ((FLASH_ACR & 1u) == 0) {
    }
    RCC_CR |= 1u; /* HSI16 on, and from now on also first after each sleep */
    while ((RCC_CR & 4u) == 0) {
    }
    RCC_CFGR = (RCC_CFGR & ~3u) | 1u | 1u << 15;
    RCC_APB1ENR |= 1u << 28;
    /* Backup domain open; in stop the reference off and the regulator low, and no wait of some ms for the reference
     * after. */
    PWR_CR |= 1u << 8 | 1u << 9 | 1u << 10 | 1u;
    RCC_CSR |= 1u << 8;
    while ((RCC_CSR & 1u << 9) == 0) {
    }
    RCC_CCIPR |= 3u << 18; /* LPTIM1 counts the crystal */
    RCC_APB1ENR |= 1u << 31;
    RCC_APB2ENR |= 1u | 1u << 9 | 1u << 12 | 1u << 14;
    SYST_RVR = CYCLES_LAST;
    SYST_CVR = 0;
    SYST_CSR = 5u; /* counts the core's clock, no interrupt */
}

static void start_pins(void) {
    for (uint32_t pin = 0; pin < 3; pin++) {
        set_mode(GPIOB, pin, 1);
        set_mode(GPIOB, pin + 3u, 2);
    }
    set_mode(GPIOB, LAMPS, 1);
    set_mode(GPIOA, CONVERTER_CLOCK, 1);
    set_pin(GPIOA, CONVERTER_CLOCK, true);
    set_mode(GPIOA, CONVERTER_DATA, 0);
    GPIO_OTYPER(GPIOA) |= 3u << THERMOMETER_FIRST;
    set_pin(GPIOA, THERMOMETER_FIRST, true);
    set_pin(GPIOA, THERMOMETER_FIRST + 1u, true);
    set_mode(GPIOA, THERMOMETER_FIRST, 1);
    set_mode(GPIOA, THERMOMETER_FIRST + 1u, 1);
    set_mode(GPIOA, CARRIER_POWER, 1);
    GPIO_AFRH(GPIOA) = (GPIO_AFRH(GPIOA) & ~0xFF0u) | 0x440u;
    set_pin(GPIOA, FRAM_SELECT, true);
    set_mode(GPIOA, FRAM_SELECT, 1);
}

void board_start(void) {
    start_clocks();
    start_pins();
    IWDG_KR = 0xCCCCu;
    IWDG_KR = 0x5555u;
    IWDG_PR = 6u; /* 37 kHz / 256, 4096 steps: 28 s */
    ADC_CFGR2 = 1u << 30;
    ADC_SMPR = ADC_FAST;
    ADC_CR = 1u << 31;
    while ((ADC_CR & 1u << 31) != 0) {
    }
    SPI1_CR1 =
        1u << 9 | 1u << 8 | 1u << 6 | 1u << 3 | 1u << 2; /* software select, on, a quarter of the clock, master */
    LPTIM1_IER = 3u;                                     /* alarm and full turn */
    LPTIM1_CR = 1u;
    LPTIM1_ARR = CRYSTAL_LAST;
    while ((LPTIM1_ISR & 1u << 4) == 0) {
    }
    LPTIM1_CR = 5u; /* runs on and on */
    SCB_SCR |= 4u;
    NVIC_ISER = 1u << LPTIM1_IRQ | 1u << USART1_IRQ;
}

/* The counter runs on the crystal, not on the core's clock, so it is read until two
 * readings agree; on its last step the turn may already be counted, so that step is
 * waited out. */
static uint64_t crystal_ticks(void) {
    for (;;) {
        __asm volatile("cpsid i");
        uint32_t first = LPTIM1_CNT & CRYSTAL_LAST;
        uint32_t second = LPTIM1_CNT & CRYSTAL_LAST;
        bool turned = (LPTIM1_ISR & 2u) != 0;
        uint64_t turns = crystal_turns;
        __asm volatile("cpsie i");
        // cppcheck-suppress knownConditionTrueFalse; the counter moves between the two readings
        if (first != second || first == CRYSTAL_LAST) {
            continue;
        }
        if (turned && first < CRYSTAL_TURN / 2u) {
            turns++;
        }
        return turns * CRYSTAL_TURN + first;
    }
}

uint64_t board_now_ms(void) {
    return crystal_ticks() * 1000u / CRYSTAL_HZ;
}

void board_alive(void) {
    IWDG_KR = 0xAAAAu;
}

void board_sleep_ms(uint32_t ms) {
    uint64_t until = crystal_ticks() + ms * CRYSTAL_HZ / 1000u;
    uint32_t match = (uint32_t)until & CRYSTAL_LAST;
    LPTIM1_ICR = 1u << 3;
    LPTIM1_CMP = match == CRYSTAL_LAST ? 0 : match;
    while ((LPTIM1_ISR & 1u << 3) == 0) {
    }
    while (crystal_ticks() < until) {
        __asm volatile("cpsid i");
        uint32_t left = (match - (LPTIM1_CNT & CRYSTAL_LAST)) & CRYSTAL_LAST;
        /* Too close to the alarm it might pass before the core sleeps. */
        if (left > 2u && left < CRYSTAL_TURN - 64u) {
            __asm volatile("wfi");
        }
        __asm volatile("cpsie i\n isb");
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
    wait_us(10);
    light.outer_dark = convert(0);
    light.inner_dark = convert(1);
    set_pin(GPIOB, LAMPS, true);
    wait_us(30);
    light.outer_lit = convert(0);
    light.inner_lit = convert(1);
    set_pin(GPIOB, LAMPS, false);
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
    wait_us(20);
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

void board_scale_on(void) {
    set_pin(GPIOA, CONVERTER_CLOCK, false);
}

/* Held high for more than 60 us, the clock line sends the converter to sleep. */
void board_scale_off(void) {
    set_pin(GPIOA, CONVERTER_CLOCK, true);
}

bool board_scale_ready(void) {
    return !pin_is_high(GPIOA, CONVERTER_DATA);
}

uint32_t board_scale_read(void) {
    uint32_t word = 0;
    for (int pulse = 0; pulse < 25; pulse++) { /* the 25th chooses channel A, gain 128 */
        set_pin(GPIOA, CONVERTER_CLOCK, true);
        wait_us(1);
        set_pin(GPIOA, CONVERTER_CLOCK, false);
        if (pulse < 24) {
            word = word << 1 | (pin_is_high(GPIOA, CONVERTER_DATA) ? 1u : 0u);
        }
        wait_us(1);
    }
    return word;
}

static void wire_slot(uint32_t pin, uint32_t low_us, uint32_t rest_us) {
    set_pin(GPIOA, pin, false);
    wait_us(low_us);
    set_pin(GPIOA, pin, true);
    wait_us(rest_us);
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
        wait_us(55);
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

static uint8_t exchange(uint8_t byte) {
    while ((SPI1_SR & 2u) == 0) {
    }
    SPI1_DR8 = byte;
    while ((SPI1_SR & 1u) == 0) {
    }
    return SPI1_DR8;
}

static void fram_open(uint8_t command, uint32_t at) {
    set_pin(GPIOA, FRAM_SELECT, false);
    (void)exchange(command);
    (void)exchange((uint8_t)(at >> 16));
    (void)exchange((uint8_t)(at >> 8));
    (void)exchange((uint8_t)at);
}

static void fram_command(uint8_t command) {
    set_pin(GPIOA, FRAM_SELECT, false);
    (void)exchange(command);
    set_pin(GPIOA, FRAM_SELECT, true);
}

/* Awake the chip draws 0.1 mA, more than the rest of the sleeping board; a select without a command wakes it. */
static void fram_wake(void) {
    set_pin(GPIOA, FRAM_SELECT, false);
    wait_us(1);
    set_pin(GPIOA, FRAM_SELECT, true);
    wait_us(FRAM_WAKES_WITHIN_US);
}

static bool fram_read(void *context, uint32_t at, uint8_t *bytes, uint32_t count) {
    (void)context;
    fram_wake();
    fram_open(FRAM_READ, at);
    for (uint32_t i = 0; i < count; i++) {
        bytes[i] = exchange(0);
    }
    set_pin(GPIOA, FRAM_SELECT, true);
    fram_command(FRAM_SLEEP);
    return true;
}

static bool fram_write(void *context, uint32_t at, const uint8_t *bytes, uint32_t count) {
    (void)context;
    fram_wake();
    fram_command(FRAM_WRITE_ENABLE);
    fram_open(FRAM_WRITE, at);
    for (uint32_t i = 0; i < count; i++) {
        (void)exchange(bytes[i]);
    }
    set_pin(GPIOA, FRAM_SELECT, true);
    fram_command(FRAM_SLEEP);
    return true;
}

dl_storage board_storage(void) {
    return (dl_storage){NULL, BOARD_STORAGE_BYTES, fram_read, fram_write};
}

void board_carrier_on(void) {
    set_pin(GPIOA, CARRIER_POWER, true);
    set_mode(GPIOA, 9, 2);
    set_mode(GPIOA, 10, 2);
    USART1_BRR = 139u; /* 16 MHz / 115200 */
    USART1_CR1 = 1u | 1u << 2 | 1u << 3 | 1u << 5;
}

void board_carrier_write(const uint8_t *bytes, size_t count) {
    for (size_t i = 0; i < count; i++) {
        while ((USART1_ISR & 1u << 7) == 0) {
        }
        USART1_TDR = bytes[i];
    }
}

int board_carrier_read(void) {
    if (incoming_in == incoming_out) {
        return -1;
    }
    int byte = incoming[incoming_out % INCOMING_BYTES];
    incoming_out++;
    return byte;
}

void board_carrier_off(void) {
    while ((USART1_ISR & 1u << 6) == 0) {
    }
    USART1_CR1 = 0;
    set_mode(GPIOA, 9, 3);
    set_mode(GPIOA, 10, 3);
    set_pin(GPIOA, CARRIER_POWER, false);
}

uint32_t board_unique(void) {
    return (UNIQUE_ID[0] ^ UNIQUE_ID[1] ^ UNIQUE_ID[5]) & 0xFFFFFFu;
}
