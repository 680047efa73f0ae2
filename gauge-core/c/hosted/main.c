/* The twin as a program: a gauge at the end of a pipe, or a checker of vectors. */
#include <stdio.h>
#include <string.h>

#include "hosted/check_vectors.h"

int main(int count, char **words)
{
    if (count >= 3 && strcmp(words[1], "vectors") == 0) {
        int worst = 0;
        for (int i = 2; i < count; i++) {
            int answer = check_vectors(words[i]);
            worst = answer > worst ? answer : worst;
        }
        return worst;
    }
    return 2;
}
