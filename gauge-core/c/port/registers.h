/* One 64-bit word for each register; the caller owns the table, gauge_inspect fills it. */
#ifndef GAUGE_PORT_REGISTERS_H
#define GAUGE_PORT_REGISTERS_H

#include <stdint.h>

#include "port/register_list.h"

#define REGISTER_AS_ENUM(name, unit) REGISTER_##name,

enum register_index { REGISTER_LIST(REGISTER_AS_ENUM) REGISTER_COUNT };

struct registers {
    int64_t values[REGISTER_COUNT];
};

/* Where a digest begins: the offset basis of the 64-bit FNV hash. */
#define REGISTERS_DIGEST_START UINT64_C(0xCBF29CE484222325)

/*
 * Folds all registers in table order: d = (rotl(d, 23) ^ value) x prime for each. Wraps modulo
 * 2^64 on purpose. Two gauges fed alike must agree.
 */
uint64_t registers_fold(const struct registers *registers, uint64_t digest);

#endif
