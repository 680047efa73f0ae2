/* The text form of the pipe: words and whole numbers, a line each. */
#ifndef GAUGE_HOSTED_TEXT_H
#define GAUGE_HOSTED_TEXT_H

#include <stddef.h>
#include <stdint.h>

#include "hosted/link.h"

#define TEXT_MOST_WORDS 8

/* One line, split in place. */
struct text_line {
    int count;
    char *words[TEXT_MOST_WORDS];
    char bytes[16384 + 1];
};

/* Waits for a line; words beyond the last stay in it, unsplit. */
void text_receive(struct text_line *line);

/* Waits for a whole message: a batch of ticks is several lines. */
void text_receive_message(struct link_message *message);

/* " VALUE" for each. */
void text_put_values(const int64_t *values, int count);

/* "@K " where K is not 0. */
void text_put_place(int place);

void text_put_bytes(const uint8_t *bytes, size_t count);

/* False where the text is not that many bytes in hexadecimal. */
int text_parse_bytes(const char *text, uint8_t *bytes, size_t count);

#endif
