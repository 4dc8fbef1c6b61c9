#include "virtual_options.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static void say_usage(void) {
    (void)fputs(
        "virtual_node --port P --node NAME [--host H] [--root traps] [--format json|cbor]\n"
        "  [--begin UNIX_SECONDS] [--hours 48] [--zone HOURS] [--arrival LOCAL_HOURS|-1] [--bees 11000]\n"
        "  [--rush SECONDS] [--lanes 8] [--seed 1] [--speed 0] [--no-clock] [--silent FROM_H FOR_H]\n"
        "  [--restart AT_H] [--storage FILE] [--truth FILE] [--user NAME --password-file FILE] [--linger SECONDS]\n"
        "Publishes the invented days of one trap through a real broker. --arrival 37.2 lets a swarm move in\n"
        "37.2 hours after the first local midnight; --speed 0 runs as fast as it can.\n",
        stderr);
}

static const char *first_line(const char *path) {
    static char line[128];
    FILE *file = fopen(path, "r");
    if (file == NULL || fgets(line, sizeof line, file) == NULL) {
        (void)fprintf(stderr, "no password in %s\n", path);
        exit(2);
    }
    (void)fclose(file);
    line[strcspn(line, "\r\n")] = '\0';
    return line;
}

static double number(const char *words) {
    return strtod(words, NULL);
}

static bool take_text(virtual_options *options, const char *name, const char *value) {
    struct {
        const char *name;
        const char **text;
    } texts[] = {{"--host", &options->address.host}, {"--node", &options->address.node},
                 {"--root", &options->address.root}, {"--user", &options->address.user},
                 {"--storage", &options->storage},   {"--truth", &options->truth}};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (strcmp(name, texts[i].name) == 0) {
            *texts[i].text = value;
            return true;
        }
    }
    return false;
}

static bool take_number(virtual_options *options, const char *name, const char *value) {
    struct {
        const char *name;
        double *number;
    } numbers[] = {{"--hours", &options->hours},          {"--speed", &options->speed},
                   {"--zone", &options->days.zone_hours}, {"--arrival", &options->days.arrival_hour},
                   {"--bees", &options->days.swarm_bees}, {"--rush", &options->days.rush_s},
                   {"--restart", &options->restart_h},    {"--linger", &options->linger_s}};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        if (strcmp(name, numbers[i].name) == 0) {
            *numbers[i].number = number(value);
            return true;
        }
    }
    return false;
}

/* The options whose value is kept as something else than text or a fraction. */
static bool take_other(virtual_options *options, const char *name, const char *value) {
    if (strcmp(name, "--port") == 0) {
        options->address.port = (int)number(value);
    } else if (strcmp(name, "--begin") == 0) {
        options->days.begins_unix_s = (uint32_t)number(value);
    } else if (strcmp(name, "--lanes") == 0) {
        options->lanes = (uint32_t)number(value);
    } else if (strcmp(name, "--seed") == 0) {
        options->seed = (uint64_t)number(value);
    } else if (strcmp(name, "--format") == 0) {
        options->format = strcmp(value, "cbor") == 0 ? DL_CBOR : DL_JSON;
    } else if (strcmp(name, "--password-file") == 0) {
        options->address.password = first_line(value);
    } else {
        return false;
    }
    return true;
}

/* Returns how many words the option took, 0 when it is unknown. */
static int take_option(virtual_options *options, char **words, int left) {
    const char *name = words[0];
    if (strcmp(name, "--no-clock") == 0) {
        options->clock = false;
        return 1;
    }
    if (left >= 3 && strcmp(name, "--silent") == 0) {
        options->silent_from_h = number(words[1]);
        options->silent_for_h = number(words[2]);
        return 3;
    }
    bool taken = left >= 2 && (take_text(options, name, words[1]) || take_number(options, name, words[1]) ||
                               take_other(options, name, words[1]));
    return taken ? 2 : 0;
}

static virtual_options defaults(void) {
    return (virtual_options){.address = {.host = "127.0.0.1", .port = 1883, .root = "traps"},
                             .days = {.begins_unix_s = (uint32_t)time(NULL) - 48u * 3600u,
                                      .arrival_hour = -1,
                                      .swarm_bees = 11000,
                                      .rush_s = 1200,
                                      .box_kg = 12.0},
                             .seed = 1,
                             .lanes = 8,
                             .hours = 48,
                             .silent_from_h = 1e9,
                             .clock = true,
                             .storage = "virtual-node.store"};
}

bool virtual_options_read(virtual_options *options, int count, char **words) {
    *options = defaults();
    for (int i = 1; i < count;) {
        int taken = take_option(options, words + i, count - i);
        if (taken == 0) {
            say_usage();
            return false;
        }
        i += taken;
    }
    if (options->address.node == NULL || options->lanes == 0 || options->lanes > DL_LANES_MAX) {
        say_usage();
        return false;
    }
    return true;
}
