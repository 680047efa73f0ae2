/* A gauge at the end of a pipe (gauge-sim/docs/pipe-protocol.md). */
#ifndef GAUGE_HOSTED_PIPE_H
#define GAUGE_HOSTED_PIPE_H

#include "hosted/link.h"

/* Speaks the protocol until the bench says end; the exit code. */
int pipe_run(const struct link_wishes *wishes);

#endif
