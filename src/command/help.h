/*
 * What --help and --version show, made from the table.
 */
#ifndef COMMAND_HELP_H
#define COMMAND_HELP_H

#include "base/text.h"

void help_write(Text *out);
void help_version(Text *out);

#endif
