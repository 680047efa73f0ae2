/* What a tick costs: time, and writes of the memory over a year. */
#ifndef GAUGE_HOSTED_BENCH_H
#define GAUGE_HOSTED_BENCH_H

/* Each answers 0, or 2 where the files of the folder cannot be read. */

/* Prints nanoseconds for each tick, one line for each round. */
int bench_run(const char *folder, int rounds);

/* Feeds the samples once and prints how many: for tools that count instructions. */
int bench_pass(const char *folder);

/* A year of the samples, and a year parked: writes of the memory in each. */
int bench_year(const char *folder);

#endif
