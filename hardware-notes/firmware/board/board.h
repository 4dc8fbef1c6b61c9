/* What the worked board can do, one function a thing. node_main.c calls nothing else. */
#ifndef DUSKLINE_BOARD_H
#define DUSKLINE_BOARD_H

#include "storage.h"

#define BOARD_STORAGE_BYTES 131072u

void board_start(void);

/* Milliseconds since the start, from the 32,768 Hz crystal, running on in sleep. */
uint64_t board_now_ms(void);

/* Sleeps until about `ms` later (2 to 1900); everything but the crystal stops. */
void board_sleep_ms(uint32_t ms);

/* The board is alive: without this for half a minute the watchdog restarts it. */
void board_alive(void);

/* Light codes (0 to 4095) of both beams of a lane with the lamps off and on. */
typedef struct board_light {
    int32_t outer_dark;
    int32_t outer_lit;
    int32_t inner_dark;
    int32_t inner_lit;
} board_light;
board_light board_look_at_lane(uint32_t lane);

/* Switches the bridge converter on; it needs 400 ms to settle at 10 readings a second. */
void board_scale_on(void);
bool board_scale_ready(void);
/* The 24-bit word that is ready. */
uint32_t board_scale_read(void);
void board_scale_off(void);

/* Thermometers: 0 at the load cell, 1 in the box. A conversion takes 750 ms. */
void board_thermometer_convert(uint32_t which);
void board_thermometer_read(uint32_t which, uint8_t scratchpad[9]);

/* Code of the battery's divider as it would be at a supply of 3.3 V. */
int32_t board_battery_code(void);

/* 128 KiB of serial FRAM. */
dl_storage board_storage(void);

/* The line to the radio module or gateway, 115200 baud. */
void board_carrier_on(void);
void board_carrier_write(const uint8_t *bytes, size_t count);
/* The next byte that has arrived, or -1. */
int board_carrier_read(void);
void board_carrier_off(void);

/* 24 bits that differ from board to board. */
uint32_t board_unique(void);

#endif
