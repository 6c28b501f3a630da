#include "store/figure.h"

#include "store/value.h"

static const FileKey number = {.kind = VALUE_NUMBER, .flag = NO_FLAG};
static const FileKey percent = {.kind = VALUE_PERCENT, .flag = NO_FLAG};
static const FileKey temperature = {.kind = VALUE_TEMPERATURE, .at = offsetof(Air, temperature), .flag = NO_FLAG};

bool figure_read_number(const char *text, size_t length, int64_t *thousandths, Err *err)
{
    return value_read(NULL, &number, text, length, UNITS_MM, thousandths, err);
}

bool figure_read_percent(const char *text, size_t length, int64_t *thousandths, Err *err)
{
    return value_read(NULL, &percent, text, length, UNITS_MM, thousandths, err);
}

bool figure_read_temperature(const char *text, size_t length, Air *air, Err *err)
{
    return value_read(NULL, &temperature, text, length, UNITS_MM, air, err);
}

void figure_write_number(int64_t thousandths, Text *out)
{
    value_write(&number, &thousandths, UNITS_MM, out);
}

void figure_write_temperature(const Air *air, Text *out)
{
    value_write(&temperature, air, UNITS_MM, out);
}
