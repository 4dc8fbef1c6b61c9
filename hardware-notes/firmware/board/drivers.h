/* What the files of the board know of each other; node_main.c knows board.h alone. */
#ifndef DUSKLINE_DRIVERS_H
#define DUSKLINE_DRIVERS_H

#include <stdint.h>

/* The clocks that everything else needs: first of all. */
void clock_start(void);
/* The crystal's count and its alarm, by which the board sleeps. */
void crystal_start(void);
/* Waits without sleeping. By the core's timer: how long a loop takes depends on the flash's wait states, and the
 * thermometers' slots do not forgive it. */
void clock_wait_us(uint32_t microseconds);

/* The microcontroller's own converter, calibrated and off. */
void analog_start(void);

/* The line to the FRAM. */
void fram_start(void);

#endif
