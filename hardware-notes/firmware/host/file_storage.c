#include "file_storage.h"

static bool read_file(void *context, uint32_t at, uint8_t *bytes, uint32_t count) {
    FILE *file = context;
    return fseek(file, (long)at, SEEK_SET) == 0 && fread(bytes, 1, count, file) == count;
}

static bool write_file(void *context, uint32_t at, const uint8_t *bytes, uint32_t count) {
    FILE *file = context;
    return fseek(file, (long)at, SEEK_SET) == 0 && fwrite(bytes, 1, count, file) == count && fflush(file) == 0;
}

static FILE *make_file(const char *path, uint32_t size) {
    FILE *file = fopen(path, "wb+");
    for (uint32_t i = 0; file != NULL && i < size; i++) {
        (void)fputc(0xFF, file);
    }
    return file;
}

dl_storage file_storage_open(const char *path, uint32_t size) {
    FILE *file = fopen(path, "rb+");
    if (file == NULL) {
        file = make_file(path, size);
    }
    return (dl_storage){file, size, read_file, write_file};
}

void file_storage_close(dl_storage *storage) {
    if (storage->context != NULL) {
        (void)fclose(storage->context);
        storage->context = NULL;
    }
}
