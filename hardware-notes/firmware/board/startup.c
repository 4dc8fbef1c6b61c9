/* From reset to main: vectors, initialised data, zeroed memory. */
#include <stdint.h>

extern uint32_t image_data_load;
extern uint32_t image_data_begin;
extern uint32_t image_data_end;
extern uint32_t image_zero_begin;
extern uint32_t image_zero_end;
extern uint32_t image_stack_top;

int main(void);
void board_crystal_alarm(void);
void board_carrier_byte(void);
void board_reset(void);

void board_reset(void) {
    const uint32_t *from = &image_data_load;
    // cppcheck-suppress comparePointers; the linker puts both ends around one region
    for (uint32_t *to = &image_data_begin; to < &image_data_end; to++) {
        *to = *from;
        from++;
    }
    // cppcheck-suppress comparePointers; likewise
    for (uint32_t *to = &image_zero_begin; to < &image_zero_end; to++) {
        *to = 0;
    }
    (void)main();
}

/* Stops here; the watchdog restarts the board. */
static void hang(void) {
    for (;;) {
    }
}

typedef void (*vector)(void);

__attribute__((section(".vectors"), used)) static const vector vectors[48] = {[0] = (vector)&image_stack_top,
                                                                              [1] = board_reset,
                                                                              [2] = hang,
                                                                              [3] = hang,
                                                                              [11] = hang,
                                                                              [14] = hang,
                                                                              [15] = hang,
                                                                              [16 + 13] = board_crystal_alarm,
                                                                              [16 + 27] = board_carrier_byte};
