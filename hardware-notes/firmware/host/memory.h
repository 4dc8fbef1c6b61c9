/* Storage for tests: bytes in RAM, with a power failure that tears a write. */
#ifndef DUSKLINE_MEMORY_H
#define DUSKLINE_MEMORY_H

#include "storage.h"

#define MEMORY_BYTES 8192u

typedef struct memory {
    uint8_t bytes[MEMORY_BYTES];
    uint32_t writes_until_torn; /* 0 = never; 1 = the next write stops half way */
    bool dead;                  /* after a torn write nothing more is written */
} memory;

dl_storage memory_storage(memory *memory, uint32_t size);

#endif
