/* A digital thermometer of the one-wire kind: nine bytes of scratchpad in,
 * hundredths of a degree out. */
#ifndef DUSKLINE_THERMOMETER_H
#define DUSKLINE_THERMOMETER_H

#include "values.h"

#define DL_SCRATCHPAD_BYTES 9u

/* CRC of x^8 + x^5 + x^4 + 1, least significant bit first, from 0. */
uint8_t dl_crc8(const uint8_t *bytes, size_t count);

/* Hundredths of a degree Celsius from a 16-bit word in sixteenths, rounded half
 * away from zero; DL_MISSING outside -55 to 125. */
int32_t dl_temperature_cc(uint16_t word);

/* DL_MISSING when the checksum fails, the bus is held (all zeros), or the word is
 * the power-on value 85: that one means that no conversion took place. */
int32_t dl_scratchpad_cc(const uint8_t scratchpad[DL_SCRATCHPAD_BYTES]);

#endif
