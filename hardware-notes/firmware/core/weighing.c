#include "weighing.h"

int32_t dl_converter_counts(uint32_t word) {
    word &= 0xFFFFFFu;
    if (word == 0x7FFFFFu || word == 0x800000u || word == 0xFFFFFFu || word == 0u) {
        return DL_MISSING;
    }
    if ((word & 0x800000u) != 0u) {
        return (int32_t)word - 0x1000000;
    }
    return (int32_t)word;
}

void dl_window_clear(dl_window *window) {
    window->used = 0;
    window->dropped = 0;
}

void dl_window_add(dl_window *window, int32_t counts) {
    if (counts == DL_MISSING || window->used >= DL_WEIGHING_WINDOW) {
        window->dropped++;
        return;
    }
    window->readings[window->used] = counts;
    window->used++;
}

static void sort(int32_t *values, uint32_t count) {
    for (uint32_t i = 1; i < count; i++) {
        int32_t value = values[i];
        uint32_t at = i;
        while (at > 0 && values[at - 1] > value) {
            values[at] = values[at - 1];
            at--;
        }
        values[at] = value;
    }
}

static int64_t divide_rounded(int64_t numerator, int64_t denominator) {
    if (denominator < 0) {
        numerator = -numerator;
        denominator = -denominator;
    }
    int64_t half = denominator / 2;
    return numerator >= 0 ? (numerator + half) / denominator : -((-numerator + half) / denominator);
}

static uint64_t square_root(uint64_t value) {
    uint64_t root = 0;
    uint64_t bit = (uint64_t)1 << 62;
    while (bit > value) {
        bit >>= 2;
    }
    while (bit != 0) {
        if (value >= root + bit) {
            value -= root + bit;
            root = (root >> 1) + bit;
        } else {
            root >>= 1;
        }
        bit >>= 2;
    }
    return value > root ? root + 1 : root;
}

static int32_t within_range(int64_t value) {
    if (value > INT32_MAX || value < -(int64_t)INT32_MAX) {
        return DL_MISSING;
    }
    return (int32_t)value;
}

/* The limit in counts beside the median: 3.5 * 1.4826 * MAD, never below 4 counts,
 * so that a converter that repeats one code rejects nothing by rounding. */
static int64_t outlier_limit(const int32_t *sorted, uint32_t count, int32_t median) {
    int32_t distances[DL_WEIGHING_WINDOW];
    for (uint32_t i = 0; i < count; i++) {
        int32_t distance = sorted[i] - median;
        distances[i] = distance < 0 ? -distance : distance;
    }
    sort(distances, count);
    int64_t limit = (int64_t)distances[count / 2] * 5189 / 1000;
    return limit < 4 ? 4 : limit;
}

dl_weight dl_window_weigh(dl_window *window, dl_calibration calibration) {
    dl_weight weight = {DL_MISSING, DL_MISSING, DL_MISSING, DL_MISSING, 0};
    if (window->used < DL_WEIGHING_ENOUGH) {
        return weight;
    }
    sort(window->readings, window->used);
    int32_t median = window->readings[window->used / 2];
    int64_t limit = outlier_limit(window->readings, window->used, median);
    int64_t sum = 0;
    int64_t squares = 0;
    uint32_t kept = 0;
    for (uint32_t i = 0; i < window->used; i++) {
        int64_t offset = (int64_t)window->readings[i] - median;
        if (offset > limit || offset < -limit) {
            weight.rejected++;
            continue;
        }
        sum += offset;
        squares += offset * offset;
        kept++;
    }
    if (kept < DL_WEIGHING_ENOUGH) {
        return weight;
    }
    weight.mean_counts = within_range(median + divide_rounded(sum, kept));
    int64_t scatter = squares - sum * sum / kept;
    uint64_t variance = scatter > 0 ? (uint64_t)(scatter / (kept - 1)) : 0u;
    weight.sd_counts = within_range((int64_t)square_root(variance));
    if (calibration.counts_per_kg != 0) {
        int64_t scale = calibration.counts_per_kg;
        int64_t above_zero = (int64_t)weight.mean_counts - calibration.zero_counts;
        weight.weight_g = within_range(divide_rounded(above_zero * 1000, scale));
        weight.sd_g = within_range(divide_rounded((int64_t)weight.sd_counts * 1000, scale < 0 ? -scale : scale));
    }
    return weight;
}

bool dl_calibrate(dl_calibration *calibration, int32_t counts_low, int32_t weight_low_g, int32_t counts_high,
                  int32_t weight_high_g) {
    int64_t counts = (int64_t)counts_high - counts_low;
    int64_t grams = (int64_t)weight_high_g - weight_low_g;
    if (grams == 0 || (counts < 1000 && counts > -1000)) {
        return false;
    }
    int64_t counts_per_kg = divide_rounded(counts * 1000, grams);
    int64_t zero = counts_low - divide_rounded(counts * weight_low_g, grams);
    if (within_range(zero) == DL_MISSING || within_range(counts_per_kg) == DL_MISSING || counts_per_kg == 0) {
        return false;
    }
    calibration->zero_counts = (int32_t)zero;
    calibration->counts_per_kg = (int32_t)counts_per_kg;
    return true;
}
