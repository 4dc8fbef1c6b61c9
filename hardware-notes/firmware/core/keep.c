#include "keep.h"

#define FILLED 0x44u
#define USED_BYTES 42u

static dl_kept fresh(void) {
    return (dl_kept){.period_s = 120, .quick_period_s = 30, .quick = DL_QUICK_AUTO};
}

static bool read_slot(const dl_storage *storage, uint32_t slot, dl_kept *kept) {
    uint8_t bytes[USED_BYTES];
    if (!storage->read(storage->context, slot * DL_KEEP_SLOT_BYTES, bytes, USED_BYTES)) {
        return false;
    }
    uint16_t crc = (uint16_t)(bytes[USED_BYTES - 2] | (uint16_t)(bytes[USED_BYTES - 1] << 8));
    if (bytes[0] != FILLED || bytes[2] > DL_QUICK_OFF || dl_crc16(bytes, USED_BYTES - 2) != crc) {
        return false;
    }
    kept->tare_known = bytes[1] != 0;
    kept->quick = (dl_quick_choice)bytes[2];
    kept->version = dl_get32(bytes + 4);
    kept->boot = dl_get32(bytes + 8);
    kept->revision = dl_get32(bytes + 12);
    kept->period_s = dl_get32(bytes + 16);
    kept->quick_period_s = dl_get32(bytes + 20);
    kept->tare = dl_get32(bytes + 24);
    kept->zero_counts = (int32_t)dl_get32(bytes + 28);
    kept->counts_per_kg = (int32_t)dl_get32(bytes + 32);
    return true;
}

dl_kept dl_keep_read(const dl_storage *storage) {
    dl_kept first = fresh();
    dl_kept second = fresh();
    bool first_intact = read_slot(storage, 0, &first);
    bool second_intact = read_slot(storage, 1, &second);
    if (second_intact && (!first_intact || second.version > first.version)) {
        return second;
    }
    return first_intact ? first : fresh();
}

bool dl_keep_write(const dl_storage *storage, dl_kept *kept) {
    kept->version++;
    uint8_t bytes[USED_BYTES] = {0};
    bytes[0] = FILLED;
    bytes[1] = kept->tare_known ? 1 : 0;
    bytes[2] = (uint8_t)kept->quick;
    dl_put32(bytes + 4, kept->version);
    dl_put32(bytes + 8, kept->boot);
    dl_put32(bytes + 12, kept->revision);
    dl_put32(bytes + 16, kept->period_s);
    dl_put32(bytes + 20, kept->quick_period_s);
    dl_put32(bytes + 24, kept->tare);
    dl_put32(bytes + 28, (uint32_t)kept->zero_counts);
    dl_put32(bytes + 32, (uint32_t)kept->counts_per_kg);
    uint16_t crc = dl_crc16(bytes, USED_BYTES - 2);
    bytes[USED_BYTES - 2] = (uint8_t)crc;
    bytes[USED_BYTES - 1] = (uint8_t)(crc >> 8);
    uint32_t slot = kept->version & 1u;
    return storage->write(storage->context, slot * DL_KEEP_SLOT_BYTES, bytes, USED_BYTES);
}
