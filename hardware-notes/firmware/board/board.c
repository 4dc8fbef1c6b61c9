/* The board as a whole: its start, its watchdog, its number. What hangs on it has a file for each thing. */
#include "board.h"

#include "drivers.h"
#include "pins.h"

void board_start(void) {
    clock_start();
    pins_start();
    IWDG_KR = 0xCCCCu;
    IWDG_KR = 0x5555u;
    IWDG_PR = 6u; /* 37 kHz / 256, 4096 steps: 28 s */
    analog_start();
    fram_start();
    crystal_start();
    SCB_SCR |= 4u;
    NVIC_ISER = 1u << LPTIM1_IRQ | 1u << USART1_IRQ;
}

void board_alive(void) {
    IWDG_KR = 0xAAAAu;
}

uint32_t board_unique(void) {
    return (UNIQUE_ID[0] ^ UNIQUE_ID[1] ^ UNIQUE_ID[5]) & 0xFFFFFFu;
}
