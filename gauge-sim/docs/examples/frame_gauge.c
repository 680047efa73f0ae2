/*
 * A counter of amp-seconds behind the pipe of gauge-sim, in frames or (argument "text") in lines.
 * It shows the fast way: whole batches are read at once, and one answer is written for each.
 * Build: cc -O2 -o frame-gauge frame_gauge.c; written from pipe-protocol.md alone.
 */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

enum { CAPACITY = 10, RATED_CURRENT = 2, RATED_DROP = 3, BITS = 4, FULL_SCALE = 5 };

static int64_t settings[66];
static int64_t charge = -1; /* nanocoulombs, -1 while nobody has declared it */
static int64_t nanoamps, per_count;
static uint32_t last_clock;
static int started;
static unsigned char in[65536];

static void power(void) {
    charge = -1;
    started = 0;
    nanoamps = 0;
    per_count = settings[FULL_SCALE] * settings[RATED_CURRENT] * 1000000 / settings[RATED_DROP]
            / ((int64_t)1 << (settings[BITS] - 1));
}

static int64_t capacity(void) { return settings[CAPACITY] * INT64_C(3600000000); }

static void tick(int32_t counts, uint32_t clock) {
    uint32_t millis = started ? clock - last_clock : 0;
    last_clock = clock;
    started = 1;
    nanoamps = counts * per_count;
    if (charge >= 0) {
        charge += nanoamps / 1000 * millis;
        charge = charge < 0 ? 0 : charge > capacity() ? capacity() : charge;
    }
}

static int64_t part(void) { return charge < 0 ? -1 : charge / (capacity() / 1000000); }

/* The machine is taken to be little-endian, as the frames are. */
static void frame(uint16_t kind, const void *payload, uint32_t length) {
    uint16_t tail[2] = {kind, 0};
    fwrite(&length, 4, 1, stdout);
    fwrite(tail, 4, 1, stdout);
    fwrite(payload, 1, length, stdout);
}

static void show_frame(void) {
    int64_t values[3] = {part(), charge < 0 ? 0 : charge, nanoamps / 1000};
    frame(65, values, sizeof values);
    fflush(stdout);
}

static void frames(void) {
    uint32_t length, number;
    uint16_t tail[2];
    while (fread(&length, 4, 1, stdin) == 1 && fread(tail, 4, 1, stdin) == 1
            && length <= sizeof in && fread(in, 1, length, stdin) == length && tail[0] != 9) {
        for (uint32_t at = 0; at < length && (tail[0] == 1 || tail[0] == 3); at += 16) {
            int32_t counts;
            memcpy(&counts, in + at, 4);
            memcpy(&number, in + at + (tail[0] == 1 ? 0 : 12), 4);
            if (tail[0] == 3) {
                tick(counts, number);
            } else {
                memcpy(&settings[number], in + at + 8, 8);
            }
        }
        if (tail[0] == 2) {
            power();
        } else if (tail[0] == 4 || tail[0] == 5) {
            int64_t argument = 0, outcome = 0; /* done */
            memcpy(&number, in, 4);
            memcpy(&argument, in + 8, 8);
            if (tail[0] == 4 && number == 0) {
                charge = capacity() / 1000000 * argument;
            } else if (tail[0] == 4) {
                outcome = 8; /* refused: not offered */
            }
            frame(66, &outcome, 8);
        }
        if (tail[0] >= 2 && tail[0] <= 5) {
            show_frame();
        }
    }
}

static void show_line(void) {
    printf("readout %" PRId64 " %" PRId64 " %" PRId64 "\n", part(), charge < 0 ? 0 : charge,
            nanoamps / 1000);
    fflush(stdout);
}

static void lines(void) {
    static const char *const keys[] = {"shunt-rated-current", "shunt-rated-drop",
            "shunt-converter-bits", "shunt-full-scale", "capacity"};
    static const int places[] = {RATED_CURRENT, RATED_DROP, BITS, FULL_SCALE, CAPACITY};
    char line[256], key[64], temperature[16];
    int64_t value;
    int32_t counts, volts;
    uint32_t clock;
    int left = 0;
    while (fgets(line, sizeof line, stdin) && strcmp(line, "end\n") != 0) {
        if (sscanf(line, "tick %" SCNd32 " %" SCNd32 " %15s %" SCNu32, &counts, &volts,
                    temperature, &clock) == 4) {
            tick(counts, clock);
            if (--left <= 0) {
                show_line();
            }
        } else if (sscanf(line, "ticks %d", &left) == 1) {
            continue;
        } else if (sscanf(line, "set %63s %" SCNd64, key, &value) == 2) {
            for (int i = 0; i < 5; i++) {
                if (strcmp(key, keys[i]) == 0) {
                    settings[places[i]] = value;
                }
            }
        } else if (strncmp(line, "power ", 6) == 0) {
            power();
            show_line();
        } else if (sscanf(line, "command declare-state-of-charge %" SCNd64, &value) == 1) {
            charge = capacity() / 1000000 * value;
            puts("outcome done");
            show_line();
        } else {
            puts(strcmp(line, "change\n") == 0 ? "outcome done" : "outcome refused-not-offered");
            show_line();
        }
    }
}

int main(int count, char **words) {
    int text = count > 1 && strcmp(words[1], "text") == 0;
    char line[256];
    printf("hello 1 frame-gauge\nreadout state-of-charge remaining current\nbatch 1024\n"
           "restart message\nform %s\nready\n", text ? "text" : "frames");
    fflush(stdout);
    while (fgets(line, sizeof line, stdin) && strcmp(line, "ready\n") != 0) {
        /* the bench's hello */
    }
    if (text) {
        lines();
    } else {
        frames();
    }
    return 0;
}
