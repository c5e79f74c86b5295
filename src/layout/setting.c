#include "layout/setting.h"

struct setting setting_from(struct arena *arena, const struct field *field,
                            const struct module *module, const struct position *position,
                            const struct rules *rules)
{
	struct setting s = {field, module, position, NULL};
	s.movement = movement_place(arena, field, module, position, rules);
	if (s.movement->line_count > 0)
		s.position = position_shifted(arena, field, module, rules, position,
		                              movement_shifts(arena, field, position, s.movement));
	return s;
}

struct setting setting_place(struct arena *arena, const struct field *field,
                             const struct rules *rules)
{
	const struct module *module = module_from_lay(arena, field->lay);
	const struct position *position = position_search(arena, field, module, rules);
	return setting_from(arena, field, module, position, rules);
}
