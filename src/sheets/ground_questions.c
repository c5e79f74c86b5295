#include "sheets/ground_questions.h"

#include <string.h>

static bool is_slab_of(const struct site_room *room, const char *id)
{
	for (size_t i = 0; i < room->slab_part_count; i++)
		if (room->slab_parts[i].slab && strcmp(room->slab_parts[i].slab->id, id) == 0)
			return true;
	return false;
}

/* A reading without a room speaks for all of them. */
static bool is_reading_of(const struct site *site, const struct site_room *room, const char *id)
{
	for (size_t i = 0; i < site->reading_count; i++) {
		const struct site_reading *reading = &site->readings[i];
		if (strcmp(reading->id, id) == 0)
			return !reading->room || reading->room == room;
	}
	return false;
}

static bool is_asked(const struct draft *draft, const struct site_room *room,
                     const struct finding *finding)
{
	return finding->state == FINDING_OPEN && finding->weight != RULE_NOTE &&
	       (strcmp(room->id, finding->about) == 0 || is_slab_of(room, finding->about) ||
	        is_reading_of(draft->site, room, finding->about));
}

const char *ground_questions(const struct draft *draft, const struct site_room *room)
{
	struct strbuf list = strbuf_in(draft->arena);
	const char *last = "";
	for (size_t i = 0; i < draft->findings->count; i++) {
		const struct finding *finding = &draft->findings->items[i];
		/* Findings about one element stand together. */
		if (!is_asked(draft, room, finding) || strcmp(last, finding->about) == 0)
			continue;
		last = finding->about;
		strbuf_printf(&list, "%s%s", list.length ? ", " : "", draft_tag(draft, last));
	}
	return list.text;
}
