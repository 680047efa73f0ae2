/* Replays the vectors of a folder and names the first row and register that differs. */
#ifndef GAUGE_HOSTED_CHECK_VECTORS_H
#define GAUGE_HOSTED_CHECK_VECTORS_H

/* 0 where every row agrees, 1 where one does not, 2 where the files cannot be read. */
int check_vectors(const char *folder);

#endif
