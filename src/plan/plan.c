#include "plan/plan.h"

enum plan_exposure plan_room_exposure(const struct plan_room *room)
{
	return room->exposure == PLAN_EXPOSURE_NONE ? room->slab->exposure : room->exposure;
}

bool plan_has_inches(const struct plan *plan)
{
	return plan->unit == PLAN_UNIT_IN || plan->unit == PLAN_UNIT_FT;
}

const struct plan_lay *plan_lay_of(const struct plan *plan, const struct plan_room *room)
{
	for (size_t i = 0; i < plan->lay_count; i++)
		for (size_t k = 0; k < plan->lays[i].room_count; k++)
			if (plan->lays[i].rooms[k] == room)
				return &plan->lays[i];
	return NULL;
}

const struct plan_membrane *plan_membrane_over(const struct plan *plan,
                                               const struct plan_room *room)
{
	for (size_t i = 0; i < plan->membrane_count; i++)
		for (size_t k = 0; k < plan->membranes[i].room_count; k++)
			if (plan->membranes[i].rooms[k] == room)
				return &plan->membranes[i];
	return NULL;
}
