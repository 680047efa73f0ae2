/* CRC-32/ISO-HDLC, worked a nibble at a time: 64 bytes of table instead of 1 KiB. */
#ifndef GAUGE_FIXED_CRC32_H
#define GAUGE_FIXED_CRC32_H

#include <stddef.h>
#include <stdint.h>

/* The state before the first byte, for crc32_add. Not zero: zeros never check against zero. */
#define CRC32_START UINT32_C(0xFFFFFFFF)

/* One byte more; the check word is the final state inverted. */
uint32_t crc32_add(uint32_t state, uint8_t byte);

/* The check word of a stretch of bytes; 0 for none. "123456789" gives CBF43926. */
uint32_t crc32_of(const uint8_t *bytes, size_t count);

#endif
