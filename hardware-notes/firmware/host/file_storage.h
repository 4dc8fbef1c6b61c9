/* Storage in a file, as EEPROM or FRAM is on a board. */
#ifndef DUSKLINE_FILE_STORAGE_H
#define DUSKLINE_FILE_STORAGE_H

#include "storage.h"

#include <stdio.h>

/* Opens or makes the file, `size` bytes long; `context` NULL when that fails. */
dl_storage file_storage_open(const char *path, uint32_t size);
void file_storage_close(dl_storage *storage);

#endif
