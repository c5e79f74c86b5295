#include "site/site.h"

#include <stdlib.h>
#include <string.h>

#include "site/build.h"
#include "site/crack.h"
#include "site/doorway.h"
#include "site/face_limit.h"
#include "site/obstacle.h"
#include "site/open_edge.h"
#include "site/outline.h"
#include "site/reading.h"
#include "site/slab.h"

static int by_id(const void *a, const void *b)
{
	const struct build_wall *x = a, *y = b;
	return strcmp(x->id, y->id);
}

const struct build_wall *build_wall_find(const struct build *build, const char *id)
{
	const struct build_wall wanted = {.id = id};
	if (!build->wall_count)
		return NULL;
	return bsearch(&wanted, build->walls, build->wall_count, sizeof wanted, by_id);
}

/* ---- what the reader has told already ---- */

static int rising(const void *a, const void *b)
{
	int x = *(const int *)a, y = *(const int *)b;
	return x < y ? -1 : x > y;
}

static void list_reported(struct build *build)
{
	const struct diag_list *diags = build->diags;
	build->reported_count = diags->diags.count;
	build->reported = ARENA_ARRAY(build->arena, int, build->reported_count);
	for (size_t i = 0; i < build->reported_count; i++)
		build->reported[i] = diags->diags.items[i].line;
	if (build->reported_count)
		qsort(build->reported, build->reported_count, sizeof(int), rising);
}

bool build_is_faulty(const struct build *build, uint64_t given, int line)
{
	if (given & PLAN_FAULTY)
		return true;
	return build->reported_count &&
	       bsearch(&line, build->reported, build->reported_count, sizeof(int), rising);
}

/* ---- rooms ---- */

static void build_outlines(struct build *build)
{
	struct site *site = build->site;
	for (size_t i = 0; i < site->room_count; i++) {
		struct site_room *room = &site->rooms[i];
		const struct plan_room *plan = &build->plan->rooms[i];
		room->plan = plan;
		room->id = plan->id;
		room->name = plan->name ? plan->name : plan->id;
		outline_build(build, room);
	}
}

/* The walls of a room that have an id, each with its first edge. */
static void index_walls_of(struct build *build, const struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	size_t first = build->wall_count;
	for (size_t i = 0; i < plan->wall_count; i++)
		build->walls[first + i] =
			(struct build_wall){plan->walls[i].id, room, room->edge_count > 0, 0};
	for (size_t e = room->edge_count; e-- > 0;)
		build->walls[first + (size_t)(room->edges[e].wall - plan->walls)].edge = e;
	for (size_t i = 0; i < plan->wall_count; i++)
		if (plan->walls[i].id)
			build->walls[build->wall_count++] = build->walls[first + i];
}

static void index_walls(struct build *build)
{
	const struct plan *plan = build->plan;
	size_t count = 0;
	for (size_t i = 0; i < plan->room_count; i++)
		count += plan->rooms[i].wall_count;
	build->walls = ARENA_ARRAY(build->arena, struct build_wall, count);
	for (size_t i = 0; i < plan->room_count; i++)
		index_walls_of(build, &build->site->rooms[i]);
	if (build->wall_count)
		qsort(build->walls, build->wall_count, sizeof *build->walls, by_id);
}

enum status site_build(struct arena *arena, const struct plan *plan, struct diag_list *diags,
                       const struct site **out_site)
{
	struct site *site = ARENA_NEW(arena, struct site);
	struct build build = {.arena = arena, .plan = plan, .diags = diags, .site = site};
	site->plan = plan;
	site->inches = plan_has_inches(plan);
	site->room_count = plan->room_count;
	site->rooms = ARENA_ARRAY(arena, struct site_room, plan->room_count);
	list_reported(&build);
	build_outlines(&build);
	index_walls(&build);
	open_edge_join_all(&build);
	slab_build_all(&build);
	doorway_build_all(&build);
	for (size_t i = 0; i < site->room_count; i++) {
		obstacle_build_all(&build, &site->rooms[i]);
		slab_divide_room(&build, &site->rooms[i]);
	}
	crack_build_all(&build);
	reading_build_all(&build);
	face_limit_check(&build);
	*out_site = site;
	return diags->diags.count ? STATUS_INPUT : STATUS_OK;
}

const struct site_room *site_room_find(const struct site *site, const char *id)
{
	for (size_t i = 0; i < site->room_count; i++)
		if (strcmp(site->rooms[i].id, id) == 0)
			return &site->rooms[i];
	return NULL;
}
