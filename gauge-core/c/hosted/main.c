/* The twin as a program: a gauge at the end of a pipe, a checker of vectors, or a bench. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "hosted/bench.h"
#include "hosted/check_vectors.h"
#include "hosted/names.h"
#include "hosted/pipe.h"
#include "settings/chemistry_preset.h"

static int usage(void)
{
    (void)fprintf(stderr, "Usage: gauge-twin                      speak the pipe, in frames\n"
                          "       gauge-twin text                 speak the pipe, in text lines\n"
                          "       gauge-twin one [text]           the same, one tick at a time\n"
                          "       gauge-twin vectors DIR...       replay vectors\n"
                          "       gauge-twin preset CODE MV       settings of a chemistry\n"
                          "       gauge-twin bench DIR [ROUNDS]   time ticks over vectors\n"
                          "       gauge-twin pass DIR             feed samples once\n"
                          "       gauge-twin year DIR             memory writes of a year\n");
    return 2;
}

static int all_vectors(int count, char **folders)
{
    int worst = 0;
    for (int i = 0; i < count; i++) {
        int answer = check_vectors(folders[i]);
        worst = answer > worst ? answer : worst;
    }
    return worst;
}

/* One line for each setting, as the command vectors writes them. */
static int preset(const char *code, const char *millivolts)
{
    struct gauge_settings settings;
    int chemistry = atoi(code);
    if (chemistry < CHEMISTRY_LEAD_ACID_FLOODED || chemistry > CHEMISTRY_NMC) {
        return usage();
    }
    chemistry_preset_init(&settings, (enum chemistry)chemistry, atol(millivolts));
    for (int i = 0; i < SETTING_COUNT; i++) {
        (void)printf("%s,%ld,%s\n", SETTING_KEYS.names[i], (long)settings.values[i],
                     SETTING_UNITS.names[i]);
    }
    return 0;
}

int main(int count, char **words)
{
    bool one = count >= 2 && strcmp(words[1], "one") == 0;
    int next = one ? 2 : 1;
    bool text = count > next && strcmp(words[next], "text") == 0;
    if (count == next + (text ? 1 : 0)) {
        struct link_wishes wishes = {"gauge-twin 1", !text, one ? 1 : LINK_MOST_TICKS};
        return pipe_run(&wishes);
    }
    if (count >= 3 && strcmp(words[1], "vectors") == 0) {
        return all_vectors(count - 2, words + 2);
    }
    if (count == 4 && strcmp(words[1], "preset") == 0) {
        return preset(words[2], words[3]);
    }
    if (count >= 3 && strcmp(words[1], "bench") == 0) {
        return bench_run(words[2], count > 3 ? atoi(words[3]) : 5);
    }
    if (count == 3 && strcmp(words[1], "pass") == 0) {
        return bench_pass(words[2]);
    }
    if (count == 3 && strcmp(words[1], "year") == 0) {
        return bench_year(words[2]);
    }
    return usage();
}
