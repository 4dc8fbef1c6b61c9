#include "backlog.h"

static uint32_t slot_at(const dl_backlog *backlog, uint32_t serial) {
    return backlog->begins_at + (serial % backlog->slots) * DL_BACKLOG_SLOT_BYTES;
}

static void encode(const dl_sample *sample, uint32_t sent_up_to, uint8_t *bytes) {
    dl_put32(bytes, sample->serial);
    dl_put32(bytes + 4, sent_up_to);
    dl_put32(bytes + 8, sample->elapsed_s);
    dl_put32(bytes + 12, sample->unix_s);
    dl_put32(bytes + 16, sample->boot);
    dl_put32(bytes + 20, sample->in);
    dl_put32(bytes + 24, sample->out);
    dl_put32(bytes + 28, (uint32_t)sample->weight_g);
    dl_put32(bytes + 32, (uint32_t)sample->weight_sd_g);
    dl_put32(bytes + 36, (uint32_t)sample->load_counts);
    dl_put32(bytes + 40, (uint32_t)sample->cell_cc);
    dl_put32(bytes + 44, (uint32_t)sample->box_cc);
    dl_put32(bytes + 48, (uint32_t)sample->battery_mv);
    bytes[52] = sample->counted ? 1 : 0;
    bytes[53] = 0x53;
    bytes[54] = 0;
    bytes[55] = 0;
    uint16_t crc = dl_crc16(bytes, DL_BACKLOG_SLOT_BYTES - 2);
    bytes[56] = (uint8_t)crc;
    bytes[57] = (uint8_t)(crc >> 8);
}

static bool decode(const uint8_t *bytes, dl_sample *sample, uint32_t *sent_up_to) {
    uint16_t crc = (uint16_t)(bytes[56] | (uint16_t)(bytes[57] << 8));
    if (bytes[53] != 0x53 || dl_crc16(bytes, DL_BACKLOG_SLOT_BYTES - 2) != crc) {
        return false;
    }
    sample->serial = dl_get32(bytes);
    *sent_up_to = dl_get32(bytes + 4);
    sample->elapsed_s = dl_get32(bytes + 8);
    sample->unix_s = dl_get32(bytes + 12);
    sample->boot = dl_get32(bytes + 16);
    sample->in = dl_get32(bytes + 20);
    sample->out = dl_get32(bytes + 24);
    sample->weight_g = (int32_t)dl_get32(bytes + 28);
    sample->weight_sd_g = (int32_t)dl_get32(bytes + 32);
    sample->load_counts = (int32_t)dl_get32(bytes + 36);
    sample->cell_cc = (int32_t)dl_get32(bytes + 40);
    sample->box_cc = (int32_t)dl_get32(bytes + 44);
    sample->battery_mv = (int32_t)dl_get32(bytes + 48);
    sample->counted = bytes[52] != 0;
    return sample->serial != 0;
}

static bool read_slot(const dl_backlog *backlog, uint32_t slot, dl_sample *sample, uint32_t *sent_up_to) {
    uint8_t bytes[DL_BACKLOG_SLOT_BYTES];
    uint32_t at = backlog->begins_at + slot * DL_BACKLOG_SLOT_BYTES;
    return backlog->storage->read(backlog->storage->context, at, bytes, DL_BACKLOG_SLOT_BYTES) &&
           decode(bytes, sample, sent_up_to) && sample->serial % backlog->slots == slot;
}

void dl_backlog_open(dl_backlog *backlog, const dl_storage *storage, uint32_t begins_at) {
    *backlog = (dl_backlog){.storage = storage, .begins_at = begins_at};
    if (storage->size > begins_at) {
        backlog->slots = (storage->size - begins_at) / DL_BACKLOG_SLOT_BYTES;
    }
    for (uint32_t slot = 0; slot < backlog->slots; slot++) {
        dl_sample sample;
        uint32_t sent_up_to;
        if (read_slot(backlog, slot, &sample, &sent_up_to) && sample.serial > backlog->newest) {
            backlog->newest = sample.serial;
            backlog->sent_up_to = sent_up_to < sample.serial ? sent_up_to : sample.serial;
        }
    }
}

bool dl_backlog_add(dl_backlog *backlog, dl_sample *sample) {
    if (backlog->slots == 0) {
        return false;
    }
    sample->serial = backlog->newest + 1;
    uint8_t bytes[DL_BACKLOG_SLOT_BYTES];
    encode(sample, backlog->sent_up_to, bytes);
    if (!backlog->storage->write(backlog->storage->context, slot_at(backlog, sample->serial), bytes,
                                 DL_BACKLOG_SLOT_BYTES)) {
        return false;
    }
    backlog->newest = sample->serial;
    return true;
}

static uint32_t oldest_waiting(const dl_backlog *backlog) {
    uint32_t oldest_held = backlog->newest > backlog->slots ? backlog->newest - backlog->slots + 1 : 1;
    uint32_t next = backlog->sent_up_to + 1;
    return next > oldest_held ? next : oldest_held;
}

uint32_t dl_backlog_waiting(const dl_backlog *backlog) {
    return backlog->newest + 1 - oldest_waiting(backlog);
}

uint32_t dl_backlog_serial(const dl_backlog *backlog, uint32_t index) {
    return oldest_waiting(backlog) + index;
}

bool dl_backlog_peek(const dl_backlog *backlog, uint32_t index, dl_sample *sample) {
    if (index >= dl_backlog_waiting(backlog)) {
        return false;
    }
    uint32_t serial = dl_backlog_serial(backlog, index);
    uint32_t sent_up_to;
    return read_slot(backlog, serial % backlog->slots, sample, &sent_up_to) && sample->serial == serial;
}

void dl_backlog_acknowledge(dl_backlog *backlog, uint32_t serial) {
    if (serial > backlog->sent_up_to && serial <= backlog->newest) {
        backlog->sent_up_to = serial;
    }
}

bool dl_backlog_newest(const dl_backlog *backlog, dl_sample *sample) {
    uint32_t sent_up_to;
    return backlog->newest != 0 && read_slot(backlog, backlog->newest % backlog->slots, sample, &sent_up_to);
}
