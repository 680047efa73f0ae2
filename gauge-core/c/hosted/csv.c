#include "hosted/csv.h"

#include <string.h>

bool csv_open(struct csv *csv, const char *folder, const char *name)
{
    csv->line_number = 0;
    csv->count = 0;
    (void)snprintf(csv->path, sizeof csv->path, "%s/%s", folder, name);
    csv->file = fopen(csv->path, "rb");
    if (csv->file == NULL) {
        (void)fprintf(stderr, "%s: cannot be opened; a folder written by the command vectors is"
                              " expected\n", csv->path);
        return false;
    }
    if (!csv_next(csv)) {
        (void)fprintf(stderr, "%s:1: is empty, a header was expected\n", csv->path);
        csv_close(csv);
        return false;
    }
    return true;
}

bool csv_next(struct csv *csv)
{
    if (fgets(csv->line, sizeof csv->line, csv->file) == NULL) {
        csv->count = 0;
        return false;
    }
    csv->line_number++;
    csv->line[strcspn(csv->line, "\r\n")] = '\0';
    csv->count = 0;
    char *place = csv->line;
    while (csv->count < CSV_MOST_FIELDS) {
        csv->fields[csv->count++] = place;
        char *comma = strchr(place, ',');
        if (comma == NULL) {
            break;
        }
        *comma = '\0';
        place = comma + 1;
    }
    return true;
}

void csv_close(struct csv *csv)
{
    if (csv->file != NULL) {
        (void)fclose(csv->file);
        csv->file = NULL;
    }
}

bool parse_int64(const char *text, int64_t *value)
{
    bool negative = text[0] == '-';
    const char *digit = negative ? text + 1 : text;
    if (*digit == '\0') {
        return false;
    }
    /* Summed below zero, where 64 bits reach one further. */
    int64_t sum = 0;
    for (; *digit != '\0'; digit++) {
        if (*digit < '0' || *digit > '9') {
            return false;
        }
        int64_t figure = *digit - '0';
        if (sum < (INT64_MIN + figure) / 10) {
            return false;
        }
        sum = sum * 10 - figure;
    }
    if (!negative && sum == INT64_MIN) {
        return false;
    }
    *value = negative ? sum : -sum;
    return true;
}

bool parse_bits32(const char *text, uint32_t *bits)
{
    int64_t value = 0;
    if (!parse_int64(text, &value) || value < INT32_MIN || value > (int64_t)UINT32_MAX) {
        return false;
    }
    *bits = (uint32_t)((uint64_t)value & UINT32_MAX);
    return true;
}
