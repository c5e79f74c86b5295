#include "layout/origin.h"

#include <string.h>

#include "layout/crack_run.h"

static const char *named(struct arena *arena, const struct field *field, const char *id,
                         bool lies_before)
{
	return lies_before ? arena_printf(arena, "%s.%s", id, field->lay->id) : id;
}

static bool has_crack(struct arena *arena, const struct field *field,
                      const struct site_crack *crack)
{
	size_t count;
	crack_runs(arena, field, crack, &count);
	return count > 0;
}

const char *origin_of_crack(struct arena *arena, const struct field *field,
                            const struct site_crack *crack)
{
	bool lies_before = false;
	for (const struct field *f = field->before; f && !lies_before; f = f->before)
		lies_before = has_crack(arena, f, crack);
	return named(arena, field, crack->id, lies_before);
}

static bool has_slab_joint(const struct field *field, const struct site_slab_joint *joint)
{
	for (size_t i = 0; i < field->carried_count; i++)
		if (field->carried[i].joint == joint)
			return true;
	return false;
}

const char *origin_of_slab_joint(struct arena *arena, const struct field *field,
                                 const struct site_slab_joint *joint)
{
	bool lies_before = false;
	for (const struct field *f = field->before; f && !lies_before; f = f->before)
		lies_before = has_slab_joint(f, joint);
	return named(arena, field, joint->id, lies_before);
}

static bool has_border(const struct field *field, const char *of)
{
	for (size_t i = 0; i < field->border_count; i++)
		if (strcmp(field->borders[i].of, of) == 0)
			return true;
	return false;
}

const char *origin_of_border(struct arena *arena, const struct field *field, const char *of)
{
	bool lies_before = false;
	for (const struct field *f = field->before; f && !lies_before; f = f->before)
		lies_before = has_border(f, of);
	return named(arena, field, of, lies_before);
}
