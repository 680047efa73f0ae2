/* Lines of comma-separated whole numbers and words, as the command vectors writes them. */
#ifndef GAUGE_HOSTED_CSV_H
#define GAUGE_HOSTED_CSV_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

#define CSV_MOST_FIELDS 96
#define CSV_LINE_BYTES 16384

struct csv {
    FILE *file;
    char path[1024];
    long line_number;
    int count;
    char *fields[CSV_MOST_FIELDS];
    char line[CSV_LINE_BYTES];
};

/* Opens FOLDER/NAME and passes its header, which stays in the fields; false with a message. */
bool csv_open(struct csv *csv, const char *folder, const char *name);

/* The next line, split in place; false at the end of the file. */
bool csv_next(struct csv *csv);

void csv_close(struct csv *csv);

/* A decimal number with an optional '-'; false for anything else or beyond 64 bits. */
bool parse_int64(const char *text, int64_t *value);

/* A number that fits 32 bits, signed or unsigned, as its bits. */
bool parse_bits32(const char *text, uint32_t *bits);

#endif
