#include "port/registers.h"

#define DIGEST_PRIME UINT64_C(0x100000001B3)

uint64_t registers_fold(const struct registers *registers, uint64_t digest)
{
    uint64_t folded = digest;
    for (int i = 0; i < REGISTER_COUNT; i++) {
        uint64_t turned = (folded << 23) | (folded >> 41);
        folded = (turned ^ (uint64_t)registers->values[i]) * DIGEST_PRIME;
    }
    return folded;
}
