#include "layout/marks.h"

#include <stdlib.h>

#include "base/array.h"
#include "pattern/lattice.h"

struct mark_list {
	struct arena *arena;
	const struct module *module;
	ARRAY_OF(struct address) marks;
};

static void add_segment(struct mark_list *list, struct segment segment, double reach)
{
	const struct module *module = list->module;
	for (size_t f = 0; f < module->face_count; f++) {
		struct address at = {.face = (int)f};
		struct lattice_walk walk = lattice_walk_near((struct lattice){module->a, module->b},
		                                             module->faces[f].ring, segment, reach);
		while (lattice_walk_next(&walk, &at.i, &at.j))
			*array_push(list->arena, &list->marks) = at;
	}
}

static int by_address(const void *a, const void *b)
{
	return address_compare(*(const struct address *)a, *(const struct address *)b);
}

static size_t sort_unique(struct address *marks, size_t count)
{
	size_t kept = 0;
	if (count > 0)
		qsort(marks, count, sizeof *marks, by_address);
	for (size_t i = 0; i < count; i++)
		if (kept == 0 || address_compare(marks[i], marks[kept - 1]) != 0)
			marks[kept++] = marks[i];
	return kept;
}

struct address *marks_near_line(struct arena *arena, const struct module *module,
                                struct point position, struct line line, double reach,
                                size_t *out_count)
{
	struct mark_list list = {.arena = arena, .module = module};
	for (size_t i = 0; i == 0 || i + 1 < line.count; i++) {
		struct point from = line.points[i],
			     to = line.points[i + 1 < line.count ? i + 1 : i];
		add_segment(&list,
		            (struct segment){point_sub(from, position), point_sub(to, position)},
		            reach);
	}
	*out_count = sort_unique(list.marks.items, list.marks.count);
	return list.marks.items;
}
