#include "fixed/crc32.h"

/* Entry n is n shifted right four times, the polynomial EDB88320 taken in for each 1 that falls. */
static const uint32_t TABLE[16] = {
    UINT32_C(0x00000000), UINT32_C(0x1DB71064), UINT32_C(0x3B6E20C8), UINT32_C(0x26D930AC),
    UINT32_C(0x76DC4190), UINT32_C(0x6B6B51F4), UINT32_C(0x4DB26158), UINT32_C(0x5005713C),
    UINT32_C(0xEDB88320), UINT32_C(0xF00F9344), UINT32_C(0xD6D6A3E8), UINT32_C(0xCB61B38C),
    UINT32_C(0x9B64C2B0), UINT32_C(0x86D3D2D4), UINT32_C(0xA00AE278), UINT32_C(0xBDBDF21C),
};

uint32_t crc32_add(uint32_t state, uint8_t byte)
{
    uint32_t crc = state ^ byte;
    crc = (crc >> 4) ^ TABLE[crc & 0xFu];
    return (crc >> 4) ^ TABLE[crc & 0xFu];
}

uint32_t crc32_of(const uint8_t *bytes, size_t count)
{
    uint32_t crc = CRC32_START;
    for (size_t i = 0; i < count; i++) {
        crc = crc32_add(crc, bytes[i]);
    }
    return ~crc;
}
