/* Time on the board: the core's clock while it is awake, the crystal for the node's milliseconds and its sleep. */
#include "board.h"
#include "drivers.h"
#include "registers.h"

#define CRYSTAL_HZ 32768u
#define CYCLES_A_MICROSECOND 16u
#define CYCLES_LAST 0xFFFFFFu

#define CRYSTAL_TURN 0x10000u
#define CRYSTAL_LAST 0xFFFFu

static volatile uint32_t crystal_turns;

void board_crystal_alarm(void);

void board_crystal_alarm(void) {
    if ((LPTIM1_ISR & 2u) != 0) {
        crystal_turns++;
    }
    LPTIM1_ICR = 3u;
}

void clock_start(void) {
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

void crystal_start(void) {
    LPTIM1_IER = 3u; /* alarm and full turn */
    LPTIM1_CR = 1u;
    LPTIM1_ARR = CRYSTAL_LAST;
    while ((LPTIM1_ISR & 1u << 4) == 0) {
    }
    LPTIM1_CR = 5u; /* runs on and on */
}

void clock_wait_us(uint32_t microseconds) {
    uint32_t begin = SYST_CVR;
    while (((begin - SYST_CVR) & CYCLES_LAST) < microseconds * CYCLES_A_MICROSECOND) {
    }
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
