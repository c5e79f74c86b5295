#include "sheets/details.h"

#include <math.h>
#include <string.h>

#include "sheets/detail.h"
#include "units/number.h"

/* A field joint goes by its own name, any other by that of what it is at in its lay: a wall has
 * a joint between any two doorways, all built alike. */
static const char *name_of(const struct draft *draft, const struct joint *joint)
{
	const char *const ends[] = {[JOINT_SOFT] = joint->side,
	                            [JOINT_MOVEMENT] = "",
	                            [JOINT_CARRIED] = "carried",
	                            [JOINT_PERIMETER] = "perimeter"};
	char *name = arena_strdup(draft->arena, joint->id);
	char *end = strstr(name, arena_printf(draft->arena, ".%s", ends[joint->kind]));
	if (end && joint->kind != JOINT_MOVEMENT)
		*end = '\0';
	return draft_tag(draft, name);
}

static bool is_named(const char *tags, const char *name)
{
	size_t length = strlen(name);
	for (const char *in = tags; (in = strstr(in, name)) != NULL; in += length)
		if ((in == tags || in[-1] == ' ') && (in[length] == ',' || in[length] == '\0'))
			return true;
	return false;
}

static const char *joined(const struct draft *draft, const char *tags, const char *name)
{
	if (is_named(tags, name))
		return tags;
	return arena_printf(draft->arena, "%s%s%s", tags, *tags ? ", " : "", name);
}

static struct detail_group *find_group(const struct detail_groups *groups, int kind,
                                       const struct buildup *facts)
{
	for (size_t i = 0; i < groups->list.count; i++)
		if (groups->list.items[i].kind == kind &&
		    buildup_is_alike(&groups->list.items[i].first, facts))
			return &groups->list.items[i];
	return NULL;
}

static void add_joint(struct detail_groups *groups, int kind, const struct buildup *facts)
{
	const struct draft *draft = facts->draft;
	struct detail_group *group = find_group(groups, kind, facts);
	if (!group) {
		group = array_push(draft->arena, &groups->list);
		*group = (struct detail_group){kind, *facts, ""};
	}
	group->first.crack = fmax(group->first.crack, facts->crack);
	group->first.is_filled |= facts->is_filled;
	group->first.is_plain |= facts->is_plain;
	group->joints = joined(draft, group->joints, name_of(draft, facts->joint));
}

/* All joints of one kind; false: no joint is of this kind, or of one after it. */
static bool add_kind(struct detail_groups *groups, const struct draft *draft, int kind)
{
	bool is_last = true;
	for (size_t i = 0; i < draft->placed->lay_count; i++) {
		const struct placed_lay *lay = &draft->placed->lays[i];
		for (size_t k = 0; k < lay->joints->joint_count; k++) {
			struct buildup facts = buildup_of(draft, lay, &lay->joints->joints[k]);
			int of = detail_kind_of(&facts);
			if (of == kind)
				add_joint(groups, kind, &facts);
			is_last = is_last && of < kind;
		}
	}
	return !is_last;
}

struct detail_groups detail_groups_of(const struct draft *draft)
{
	struct detail_groups groups = {0};
	for (int kind = 0; add_kind(&groups, draft, kind); kind++)
		;
	return groups;
}

struct details details_of(const struct draft *draft)
{
	struct detail_groups groups = detail_groups_of(draft);
	struct details details = {ARENA_ARRAY(draft->arena, struct section, groups.list.count),
	                          groups.list.count, 0, 0};
	for (size_t i = 0; i < details.count; i++) {
		struct section *section = &details.items[i];
		*section = detail_section(&groups.list.items[i].first);
		section->title = arena_printf(draft->arena, "%zu  %s", i + 1, section->title);
		section->joints = groups.list.items[i].joints;
	}
	return details;
}

const char *detail_number(const struct draft *draft, const struct detail_groups *groups,
                          const struct placed_lay *lay, const struct joint *joint)
{
	struct buildup facts = buildup_of(draft, lay, joint);
	const struct detail_group *group = find_group(groups, detail_kind_of(&facts), &facts);
	return group ? arena_printf(draft->arena, "%zu", (size_t)(group - groups->list.items) + 1)
	             : "";
}
