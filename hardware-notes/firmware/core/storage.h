/* Memory that keeps its content without power (EEPROM, FRAM, a file on the host),
 * and the small records that survive in it. The board supplies read and write. */
#ifndef DUSKLINE_STORAGE_H
#define DUSKLINE_STORAGE_H

#include "values.h"

typedef struct dl_storage {
    void *context;
    uint32_t size;
    bool (*read)(void *context, uint32_t at, uint8_t *bytes, uint32_t count);
    bool (*write)(void *context, uint32_t at, const uint8_t *bytes, uint32_t count);
} dl_storage;

/* CRC-16 with polynomial 0x1021 from 0xFFFF, as ITU-T V.41 devices use it. */
uint16_t dl_crc16(const uint8_t *bytes, size_t count);
/* The same, carried on from `crc`. */
uint16_t dl_crc16_more(uint16_t crc, const uint8_t *bytes, size_t count);

void dl_put32(uint8_t *bytes, uint32_t value);
uint32_t dl_get32(const uint8_t *bytes);

#endif
