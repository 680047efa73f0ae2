/*
 * Counts the divisions of a tick on a 32-bit machine without a divider, where each is a call: the
 * linker's --wrap puts these in the way. For 32-bit ARM under Linux, see .ci/budget.
 */
#include <stdio.h>

#include "gauge/gauge.h"

unsigned wide_divisions;
unsigned narrow_divisions;
static unsigned long wide_in_ticks;
static unsigned long narrow_in_ticks;

#define COUNTED(name, counter) \
    __asm__(".syntax unified\n.text\n.thumb_func\n.global __wrap_" name "\n__wrap_" name ":\n" \
            "push {r0, r1}\nldr r0, =" counter "\nldr r1, [r0]\nadds r1, r1, #1\n" \
            "str r1, [r0]\npop {r0, r1}\nb __real_" name "\n.ltorg\n")

COUNTED("__aeabi_ldivmod", "wide_divisions");
COUNTED("__aeabi_uldivmod", "wide_divisions");
COUNTED("__aeabi_idiv", "narrow_divisions");
COUNTED("__aeabi_uidiv", "narrow_divisions");
COUNTED("__aeabi_idivmod", "narrow_divisions");
COUNTED("__aeabi_uidivmod", "narrow_divisions");

void __real_gauge_tick(struct gauge *g, const struct sample *sample);
void __wrap_gauge_tick(struct gauge *g, const struct sample *sample);

/* Only what happens inside a tick counts: reading the samples divides too. */
void __wrap_gauge_tick(struct gauge *g, const struct sample *sample)
{
    wide_divisions = 0;
    narrow_divisions = 0;
    __real_gauge_tick(g, sample);
    wide_in_ticks += wide_divisions;
    narrow_in_ticks += narrow_divisions;
}

__attribute__((destructor)) static void tell(void)
{
    (void)printf("wide %lu\nnarrow %lu\n", wide_in_ticks, narrow_in_ticks);
}
