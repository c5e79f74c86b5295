/* embedded_table.h - what the build generates and embedded.c looks through. */
#ifndef BASE_EMBEDDED_TABLE_H
#define BASE_EMBEDDED_TABLE_H
#include "base/embedded.h"

extern const struct embedded embedded_table[];
extern const size_t embedded_table_count;

#endif
