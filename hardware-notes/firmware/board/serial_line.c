/* The serial line to the radio module or gateway. Bytes go out while the caller waits; what comes in is kept by an
 * interrupt until it is asked for. */
#include "board.h"
#include "pins.h"

#define INCOMING_BYTES 256u

static volatile uint8_t incoming[INCOMING_BYTES];
static volatile uint32_t incoming_in;
static uint32_t incoming_out;

void board_carrier_byte(void);

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

void board_carrier_on(void) {
    pin_set(GPIOA, CARRIER_POWER, true);
    pin_use_as(GPIOA, CARRIER_SENDS, PIN_ALTERNATE);
    pin_use_as(GPIOA, CARRIER_RECEIVES, PIN_ALTERNATE);
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
    pin_use_as(GPIOA, CARRIER_SENDS, PIN_ANALOG);
    pin_use_as(GPIOA, CARRIER_RECEIVES, PIN_ANALOG);
    pin_set(GPIOA, CARRIER_POWER, false);
}
