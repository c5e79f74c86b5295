#include "layout/soft_search.h"

/* Gates at which a walk ends are walked outwards. */
static struct soft_gate *gates_of(struct arena *arena, const struct soft_ports *ports, bool outward)
{
	struct soft_gate *gates = ARENA_ARRAY(arena, struct soft_gate, ports->ports.count);
	for (size_t k = 0; k < ports->ports.count; k++) {
		gates[k] = ports->ports.items[k].gate;
		gates[k].step.reversed ^= outward;
	}
	return gates;
}

bool soft_search(struct arena *arena, const struct soft_setting *setting, struct soft_unit *unit,
                 const struct soft_ports *from, const struct soft_ports *to,
                 struct soft_walk *out_walk)
{
	const struct soft_query query = {
		.network = setting->tiling->network,
		.module = setting->tiling->module,
		.is_open = corridor_is_open,
		.context = &unit->corridor,
		.from = gates_of(arena, from, false),
		.to = gates_of(arena, to, true),
		.from_count = from->ports.count,
		.to_count = to->ports.count,
		.turn_penalty = setting->turn_penalty,
	};
	struct soft_path path = soft_path_search(arena, &query);
	if (path.count == 0)
		return false;
	*out_walk =
		(struct soft_walk){path, from->ports.items[path.from], to->ports.items[path.to]};
	return true;
}
