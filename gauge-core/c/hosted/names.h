/* Names of codes, registers and settings, for programs on a machine with a terminal. */
#ifndef GAUGE_HOSTED_NAMES_H
#define GAUGE_HOSTED_NAMES_H

#include <stdbool.h>

struct name_table {
    const char *const *names;
    int count;
};

extern const struct name_table COMMAND_NAMES;
extern const struct name_table OUTCOME_NAMES;
extern const struct name_table OFF_TIME_NAMES;
extern const struct name_table EVENT_NAMES;
extern const struct name_table REGISTER_NAMES;
extern const struct name_table REGISTER_UNITS;
/* Settings have keys of their own, in lower case. */
extern const struct name_table SETTING_KEYS;
extern const struct name_table SETTING_UNITS;

/*
 * The number of a name, or -1. Letters match in either case and '-' matches '_': the tables hold
 * AT_LEAST, a vector file says AT_LEAST, the pipe says at-least.
 */
int number_of_name(const struct name_table *table, const char *name);

/* Writes a name in lower case with hyphens; room for 64 bytes. */
void hyphen_name(const struct name_table *table, int number, char text[64]);

#endif
