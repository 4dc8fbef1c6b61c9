/* The serial FRAM that holds calibration, settings and samples; asleep but for a read or a write. */
#include "board.h"
#include "drivers.h"
#include "pins.h"

#define FRAM_WRITE_ENABLE 0x06u
#define FRAM_WRITE 0x02u
#define FRAM_READ 0x03u
#define FRAM_SLEEP 0xB9u
/* Data sheets of such chips give 400 to 450. */
#define FRAM_WAKES_WITHIN_US 500u

void fram_start(void) {
    /* Software select, on, a quarter of the clock, master. */
    SPI1_CR1 = 1u << 9 | 1u << 8 | 1u << 6 | 1u << 3 | 1u << 2;
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
    pin_set(GPIOA, FRAM_SELECT, false);
    (void)exchange(command);
    (void)exchange((uint8_t)(at >> 16));
    (void)exchange((uint8_t)(at >> 8));
    (void)exchange((uint8_t)at);
}

static void fram_command(uint8_t command) {
    pin_set(GPIOA, FRAM_SELECT, false);
    (void)exchange(command);
    pin_set(GPIOA, FRAM_SELECT, true);
}

/* Awake the chip draws 0.1 mA, more than the rest of the sleeping board; a select without a command wakes it. */
static void fram_wake(void) {
    pin_set(GPIOA, FRAM_SELECT, false);
    clock_wait_us(1);
    pin_set(GPIOA, FRAM_SELECT, true);
    clock_wait_us(FRAM_WAKES_WITHIN_US);
}

static bool fram_read(void *context, uint32_t at, uint8_t *bytes, uint32_t count) {
    (void)context;
    fram_wake();
    fram_open(FRAM_READ, at);
    for (uint32_t i = 0; i < count; i++) {
        bytes[i] = exchange(0);
    }
    pin_set(GPIOA, FRAM_SELECT, true);
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
    pin_set(GPIOA, FRAM_SELECT, true);
    fram_command(FRAM_SLEEP);
    return true;
}

dl_storage board_storage(void) {
    return (dl_storage){NULL, BOARD_STORAGE_BYTES, fram_read, fram_write};
}
