#include "settings.h"

#include "flat_json.h"
#include "text.h"

static const char *const NOT_A_PACK = "payload";

typedef struct record {
    dl_json_value name;
    dl_json_value number;
    dl_json_value words;
    bool has_name;
    bool has_number;
    bool has_words;
} record;

static bool number_within(const record *one, uint32_t low, uint32_t high, uint32_t *into) {
    if (!one->has_number || !one->number.whole || one->number.number < (int64_t)low ||
        one->number.number > (int64_t)high) {
        return false;
    }
    *into = (uint32_t)one->number.number;
    return true;
}

static bool read_quick(const record *one, dl_quick_choice *quick) {
    static const char *const choices[] = {"auto", "on", "off"};
    for (int i = 0; one->has_words && i < 3; i++) {
        if (dl_json_is(&one->words, choices[i])) {
            *quick = (dl_quick_choice)i;
            return true;
        }
    }
    return false;
}

/* NULL when good or unknown, else the name of the setting at fault. */
static const char *take_record(dl_settings *settings, const record *one) {
    if (dl_json_is(&one->name, "rev")) {
        return number_within(one, 1, INT32_MAX, &settings->revision) ? NULL : "rev";
    }
    if (dl_json_is(&one->name, "period")) {
        settings->has_period = number_within(one, 10, 3600, &settings->period_s);
        return settings->has_period ? NULL : "period";
    }
    if (dl_json_is(&one->name, "quick-period")) {
        settings->has_quick_period = number_within(one, 5, 600, &settings->quick_period_s);
        return settings->has_quick_period ? NULL : "quick-period";
    }
    if (dl_json_is(&one->name, "quick")) {
        settings->has_quick = read_quick(one, &settings->quick);
        return settings->has_quick ? NULL : "quick";
    }
    if (dl_json_is(&one->name, "tare")) {
        settings->has_tare = number_within(one, 0, INT32_MAX, &settings->tare);
        return settings->has_tare ? NULL : "tare";
    }
    if (dl_json_is(&one->name, "time")) {
        settings->has_time = number_within(one, DL_UNIX_EARLIEST, DL_UNIX_LATEST, &settings->unix_s);
        return settings->has_time ? NULL : "time";
    }
    return NULL;
}

static void take_field(record *one, const dl_json_walk *walk) {
    if (dl_json_is(&walk->key, "n") && walk->value.kind == DL_JSON_STRING) {
        one->name = walk->value;
        one->has_name = true;
    } else if (dl_json_is(&walk->key, "v") && walk->value.kind == DL_JSON_NUMBER) {
        one->number = walk->value;
        one->has_number = true;
    } else if (dl_json_is(&walk->key, "vs") && walk->value.kind == DL_JSON_STRING) {
        one->words = walk->value;
        one->has_words = true;
    }
}

static const char *periods_fit(const dl_settings *settings, const dl_kept *kept) {
    uint32_t period = settings->has_period ? settings->period_s : kept->period_s;
    uint32_t quick = settings->has_quick_period ? settings->quick_period_s : kept->quick_period_s;
    return quick <= period ? NULL : "quick-period";
}

const char *dl_settings_read(dl_settings *settings, const dl_kept *kept, const char *bytes, size_t count) {
    *settings = (dl_settings){0};
    if (count > DL_SETTINGS_BYTES_MAX) {
        return NOT_A_PACK;
    }
    const char *fault = NULL;
    uint32_t records = 0;
    record one = {0};
    dl_json_walk walk;
    dl_json_begin(&walk, bytes, count);
    for (dl_json_event event = dl_json_next(&walk); event != DL_JSON_DONE; event = dl_json_next(&walk)) {
        if (event == DL_JSON_BROKEN || records > DL_SETTINGS_RECORDS_MAX) {
            return NOT_A_PACK;
        }
        if (event == DL_JSON_RECORD) {
            one = (record){0};
            records++;
        } else if (event == DL_JSON_FIELD) {
            take_field(&one, &walk);
        } else if (one.has_name && fault == NULL) {
            fault = take_record(settings, &one);
        }
    }
    if (fault == NULL && settings->revision == 0) {
        fault = "rev";
    }
    return fault != NULL ? fault : periods_fit(settings, kept);
}

bool dl_settings_apply(const dl_settings *settings, dl_kept *kept) {
    kept->revision = settings->revision;
    if (settings->has_period) {
        kept->period_s = settings->period_s;
    }
    if (settings->has_quick_period) {
        kept->quick_period_s = settings->quick_period_s;
    }
    if (settings->has_quick) {
        kept->quick = settings->quick;
    }
    if (settings->has_tare && !kept->tare_known) {
        kept->tare_known = true;
        kept->tare = settings->tare;
    }
    return settings->has_tare && settings->tare != kept->tare;
}

static void add_number(dl_text *text, const char *name, const char *unit, int64_t value) {
    dl_text_add(text, ",{\"n\":\"");
    dl_text_add(text, name);
    dl_text_add(text, "\",\"u\":\"");
    dl_text_add(text, unit);
    dl_text_add(text, "\",\"v\":");
    dl_text_number(text, value);
    dl_text_add(text, "}");
}

static void add_words(dl_text *text, const char *name, const char *words) {
    dl_text_add(text, ",{\"n\":\"");
    dl_text_add(text, name);
    dl_text_add(text, "\",\"vs\":\"");
    dl_text_add(text, words);
    dl_text_add(text, "\"}");
}

static const char *quick_word(dl_quick_choice quick) {
    if (quick == DL_QUICK_ON) {
        return "on";
    }
    return quick == DL_QUICK_OFF ? "off" : "auto";
}

size_t dl_settings_acknowledge(const dl_kept *kept, const dl_state_report *report, char *bytes, size_t size) {
    dl_text text;
    dl_text_begin(&text, bytes, size);
    dl_text_add(&text, "[{\"bn\":\"");
    dl_text_add(&text, report->base_name);
    dl_text_add(&text, "\",\"n\":\"rev\",\"u\":\"count\",\"v\":");
    dl_text_number(&text, kept->revision);
    dl_text_add(&text, "}");
    add_number(&text, "period", "s", kept->period_s);
    add_number(&text, "quick-period", "s", kept->quick_period_s);
    add_words(&text, "quick", quick_word(kept->quick));
    dl_text_add(&text,
                report->quick_now ? ",{\"n\":\"quick-now\",\"vb\":true}" : ",{\"n\":\"quick-now\",\"vb\":false}");
    if (kept->tare_known) {
        add_number(&text, "tare", "count", kept->tare);
    }
    add_number(&text, "zero", "count", kept->zero_counts);
    add_number(&text, "lanes", "count", report->lanes);
    add_number(&text, "lanes-faulty", "count", report->lanes_faulty);
    add_number(&text, "stored", "count", report->stored);
    if (report->unix_s != 0) {
        add_number(&text, "clock", "s", report->unix_s);
    }
    if (report->refused != NULL) {
        add_words(&text, "refused", report->refused);
    }
    dl_text_add(&text, "]");
    return text.overflowed ? 0 : text.used;
}
