#include "memory.h"

#include <string.h>

static bool read_memory(void *context, uint32_t at, uint8_t *bytes, uint32_t count) {
    const memory *from = context;
    memcpy(bytes, from->bytes + at, count);
    return true;
}

static bool write_memory(void *context, uint32_t at, const uint8_t *bytes, uint32_t count) {
    memory *into = context;
    if (into->dead) {
        return false;
    }
    if (into->writes_until_torn == 1) {
        into->dead = true;
        memcpy(into->bytes + at, bytes, count / 2);
        return false;
    }
    if (into->writes_until_torn > 1) {
        into->writes_until_torn--;
    }
    memcpy(into->bytes + at, bytes, count);
    return true;
}

dl_storage memory_storage(memory *memory, uint32_t size) {
    return (dl_storage){memory, size, read_memory, write_memory};
}
