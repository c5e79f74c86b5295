/* title_block.h - title block, revision table and status at the foot of the text column.
 * Source: fields of ISO 7200 (docs/sources.md S11, S12); place after ISO 9431; own design. */
#ifndef SHEETS_TITLE_BLOCK_H
#define SHEETS_TITLE_BLOCK_H
#include "sheets/sheet.h"

/* Takes the height of title block and revision table off the foot of sheet->column. */
void title_block_reserve(struct sheet *);
/* Draws them; needs the sheet's scale and number. */
void title_block_draw(struct sheet *);
/* Scale bar and north at the left of the band, the reviewer's clear box at its right.
 * A sheet without one has the box alone. */
void title_band_draw(struct sheet *);
/* What is left between them, for the legend. */
struct paper_box title_band_middle(const struct sheet *);
/* North alone, for a sheet without a scale, and the place beside it. */
void title_band_north(struct sheet *);
struct paper_box title_band_beside_north(const struct sheet *);

#endif
