/*
 * The twin on bare metal: start-up, a loop that feeds samples, and a store in memory-mapped FRAM.
 * It is the smallest program around the logic, so that its size is the logic's. A port replaces
 * what reads the converters and what shows the readout.
 */
#include "gauge/gauge.h"

#define SLOT_COUNT 8
#define SLOT_BYTES 256

/* From the linker script. */
extern uint32_t data_image[];
extern uint32_t data_begin[];
extern uint32_t data_end[];
extern uint32_t bss_begin[];
extern uint32_t bss_end[];
extern uint32_t stack_top[];
extern volatile uint8_t kept_memory[];

/* Filled by the converters' interrupt, which raises the flag last. */
volatile struct sample sample_of_interrupt;
volatile bool sample_is_ready;

/* Read by the display. */
struct readout shown;

static struct gauge battery_gauge;
static struct gauge_settings installed;

static int fram_read(void *context, int32_t slot, uint8_t *destination, size_t count)
{
    (void)context;
    for (size_t i = 0; i < count; i++) {
        destination[i] = kept_memory[slot * SLOT_BYTES + (int32_t)i];
    }
    return STORE_OK;
}

static int fram_erase(void *context, int32_t slot)
{
    (void)context;
    for (int32_t i = 0; i < SLOT_BYTES; i++) {
        kept_memory[slot * SLOT_BYTES + i] = 0xFF;
    }
    return STORE_OK;
}

static int fram_program(void *context, int32_t slot, const uint8_t *source, size_t count)
{
    (void)context;
    for (size_t i = 0; i < count; i++) {
        kept_memory[slot * SLOT_BYTES + (int32_t)i] = source[i];
    }
    return STORE_OK;
}

static void take_sample(struct sample *sample)
{
    while (!sample_is_ready) {
        /* A port sleeps here until the next interrupt. */
    }
    sample->shunt_counts = sample_of_interrupt.shunt_counts;
    sample->voltage_counts = sample_of_interrupt.voltage_counts;
    sample->temperature_millicelsius = sample_of_interrupt.temperature_millicelsius;
    sample->clock_millis = sample_of_interrupt.clock_millis;
    sample_is_ready = false;
}

int main(void)
{
    static const struct state_store FRAM = {SLOT_COUNT,   SLOT_BYTES, fram_read,
                                            fram_erase, fram_program, NULL};
    static const struct event_sink NO_EVENTS = {NULL, NULL};
    struct sample sample;
    gauge_settings_init(&installed);
    gauge_init(&battery_gauge, &installed, &FRAM, &NO_EVENTS);
    gauge_power_up(&battery_gauge, 0, OFF_TIME_UNKNOWN);
    for (;;) {
        take_sample(&sample);
        gauge_tick(&battery_gauge, &sample);
        gauge_read(&battery_gauge, &shown);
    }
}

/* Initialised data comes from flash, the rest begins at zero. */
void reset(void)
{
    const uint32_t *from = data_image;
    for (uint32_t *to = data_begin; to < data_end; to++) {
        *to = *from++;
    }
    for (uint32_t *to = bss_begin; to < bss_end; to++) {
        *to = 0;
    }
    (void)main();
}

/* Top of the stack and the reset handler; no interrupt is on before a port sets one up. */
struct vectors {
    const uint32_t *stack;
    void (*handler)(void);
};

__attribute__((section(".vectors"), used)) static const struct vectors VECTORS = {stack_top, reset};
