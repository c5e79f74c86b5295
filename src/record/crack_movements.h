/* crack_movements.h - what is expected of each crack, with what it was worked out from. */
#ifndef RECORD_CRACK_MOVEMENTS_H
#define RECORD_CRACK_MOVEMENTS_H
#include "layout/placed.h"
#include "record/markup.h"

void crack_movements_write(struct markup *, struct arena *, const struct placed *);

#endif
