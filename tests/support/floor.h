/* floor.h - a small placed floor built by hand, for tests of what reads one.
 * A room of 4000 x 3000 mm of 300 x 600 tile, a crack from south to north with its strip
 * and two soft joints, a contraction joint along the east wall. Every struct may be changed
 * before it is read. Units: mm. Owns: arena. */
#ifndef SUPPORT_FLOOR_H
#define SUPPORT_FLOOR_H
#include "layout/placed.h"

struct floor {
	struct plan plan;
	struct plan_job job;
	struct plan_slab slab;
	struct plan_room plan_room;
	struct plan_crack plan_crack;
	struct plan_slab_joint plan_joint;
	struct plan_tile tile;
	struct plan_lay plan_lay;
	struct plan_membrane membrane;
	struct plan_ref unmet;
	struct site site;
	struct site_room room;
	struct site_slab_part slab_part;
	struct site_crack crack;
	struct site_slab_joint joint;
	struct field field;
	struct field_border borders[4];
	struct field_carried carried;
	struct module module;
	struct face face;
	struct position position;
	struct border_cut cut;
	struct movement movement; /* no lines: a test may count the one beside it */
	struct movement_line movement_line;
	struct tiling tiling;
	struct panel panel;
	struct cracks cracks;
	struct placed_crack placed_crack;
	struct crack_answer answers[4];
	struct crack_group group;
	struct hold hold;
	struct strips strips;
	struct strip strip;
	struct strip_piece piece;
	struct soft_joint softs[2];
	struct joints joints;
	struct joint joint_list[3];
	struct controls controls;
	struct control control;
	struct first_tile first;
	struct placed_lay lay;
	struct placed placed;
};

/* A floor that no rule asks anything about, in mm. */
struct floor *floor_new(struct arena *, const struct rules *);
/* Judges the crack again after its width, step or slab were changed. */
void floor_judge_crack(struct floor *);
struct region floor_rectangle(struct arena *, double x0, double y0, double x1, double y1);

#endif
