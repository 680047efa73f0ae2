/* Nanoseconds of a tick, over the samples of a folder of vectors or over the frozen day. */
#ifndef GAUGE_HOSTED_BENCH_H
#define GAUGE_HOSTED_BENCH_H

/* Prints one line for each round; 0, or 2 where the file cannot be read. */
int bench_run(const char *folder, int rounds);

#endif
