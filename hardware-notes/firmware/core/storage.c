#include "storage.h"

uint16_t dl_crc16(const uint8_t *bytes, size_t count) {
    return dl_crc16_more(0xFFFFu, bytes, count);
}

uint16_t dl_crc16_more(uint16_t crc, const uint8_t *bytes, size_t count) {
    for (size_t i = 0; i < count; i++) {
        crc = (uint16_t)(crc ^ (uint16_t)(bytes[i] << 8));
        for (int bit = 0; bit < 8; bit++) {
            crc = (uint16_t)((crc & 0x8000u) != 0u ? (uint16_t)(crc << 1) ^ 0x1021u : (uint16_t)(crc << 1));
        }
    }
    return crc;
}

void dl_put32(uint8_t *bytes, uint32_t value) {
    bytes[0] = (uint8_t)value;
    bytes[1] = (uint8_t)(value >> 8);
    bytes[2] = (uint8_t)(value >> 16);
    bytes[3] = (uint8_t)(value >> 24);
}

uint32_t dl_get32(const uint8_t *bytes) {
    return (uint32_t)bytes[0] | (uint32_t)bytes[1] << 8 | (uint32_t)bytes[2] << 16 | (uint32_t)bytes[3] << 24;
}
