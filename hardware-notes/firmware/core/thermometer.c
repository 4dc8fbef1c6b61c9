#include "thermometer.h"

#define POWER_ON_WORD 0x0550u

uint8_t dl_crc8(const uint8_t *bytes, size_t count) {
    uint8_t crc = 0;
    for (size_t i = 0; i < count; i++) {
        crc ^= bytes[i];
        for (int bit = 0; bit < 8; bit++) {
            crc = (uint8_t)((crc & 1u) != 0u ? (crc >> 1) ^ 0x8Cu : crc >> 1);
        }
    }
    return crc;
}

int32_t dl_temperature_cc(uint16_t word) {
    int32_t sixteenths = word >= 0x8000u ? (int32_t)word - 0x10000 : (int32_t)word;
    if (sixteenths < -55 * 16 || sixteenths > 125 * 16) {
        return DL_MISSING;
    }
    int32_t scaled = sixteenths * 100;
    return scaled >= 0 ? (scaled + 8) / 16 : -((-scaled + 8) / 16);
}

int32_t dl_scratchpad_cc(const uint8_t scratchpad[DL_SCRATCHPAD_BYTES]) {
    bool held = true;
    for (size_t i = 0; i < DL_SCRATCHPAD_BYTES; i++) {
        held = held && scratchpad[i] == 0;
    }
    if (held || dl_crc8(scratchpad, DL_SCRATCHPAD_BYTES - 1) != scratchpad[DL_SCRATCHPAD_BYTES - 1]) {
        return DL_MISSING;
    }
    uint16_t word = (uint16_t)(scratchpad[0] | (uint16_t)(scratchpad[1] << 8));
    return word == POWER_ON_WORD ? DL_MISSING : dl_temperature_cc(word);
}
