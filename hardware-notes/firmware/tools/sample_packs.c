/* Writes packs for an independent decoder: one line a pack, `json HEX` or
 * `cbor HEX`, then the samples that went in, one line each. */
#include "chance.h"
#include "senml.h"

#include <inttypes.h>
#include <stdio.h>

static int32_t some(chance *chance, int32_t span) {
    return chance_share(chance) < 0.2 ? DL_MISSING : (int32_t)((chance_share(chance) * 2 - 1) * span);
}

static dl_sample random_sample(chance *chance) {
    dl_sample sample = {.boot = (uint32_t)chance_bits(chance) >> (chance_bits(chance) % 32),
                        .counted = chance_share(chance) < 0.7,
                        .in = (uint32_t)chance_bits(chance) >> (chance_bits(chance) % 32),
                        .out = (uint32_t)chance_bits(chance) >> (chance_bits(chance) % 32),
                        .weight_g = some(chance, 200000),
                        .weight_sd_g = some(chance, 300),
                        .load_counts = some(chance, 8388607),
                        .cell_cc = some(chance, 6000),
                        .box_cc = some(chance, 6000),
                        .battery_mv = some(chance, 5000)};
    return sample;
}

static void print_sample(const dl_sample *sample, dl_time time, uint32_t seq) {
    printf("sample %d %" PRId64 " %d %" PRIu32 " %" PRIu32 " %" PRId32 " %" PRId32 " %" PRId32 " %" PRId32 " %" PRId32
           " %" PRId32 " %" PRIu32 " %" PRIu32 "\n",
           time.absolute ? 1 : 0, time.absolute ? (int64_t)time.unix_s : -(int64_t)time.age_s, sample->counted ? 1 : 0,
           sample->in, sample->out, sample->weight_g, sample->weight_sd_g, sample->load_counts, sample->cell_cc,
           sample->box_cc, sample->battery_mv, sample->boot, seq);
}

static void print_pack(chance *chance, dl_format format) {
    uint8_t bytes[2000];
    dl_pack pack;
    dl_pack_begin(&pack, format, bytes, sizeof bytes);
    dl_sample samples[6];
    dl_time times[6];
    uint32_t seqs[6] = {0};
    int fitted = 0;
    int wanted = 1 + (int)(chance_share(chance) * 6);
    bool absolute = chance_share(chance) < 0.5;
    uint32_t begin_s = absolute ? 1777888800u : 5000u;
    for (; fitted < wanted; fitted++) {
        samples[fitted] = random_sample(chance);
        times[fitted] = (dl_time){absolute, begin_s + (uint32_t)fitted * 120u, begin_s - (uint32_t)fitted * 120u};
        seqs[fitted] = fitted == 0 ? 17 : 0;
        if (!dl_pack_add(&pack, fitted == 0 ? "urn:dev:mac:02a1c0fffe000007:" : NULL, &samples[fitted], times[fitted],
                         seqs[fitted])) {
            break;
        }
    }
    size_t length = dl_pack_end(&pack);
    printf("%s ", format == DL_JSON ? "json" : "cbor");
    for (size_t i = 0; i < length; i++) {
        printf("%02x", bytes[i]);
    }
    printf("\n");
    for (int i = 0; i < fitted; i++) {
        print_sample(&samples[i], times[i], seqs[i]);
    }
}

int main(void) {
    chance chance = chance_from(2026);
    for (int i = 0; i < 400; i++) {
        print_pack(&chance, i % 2 == 0 ? DL_JSON : DL_CBOR);
    }
    return 0;
}
