/* The engine with the program's own fonts. */
#include "base/embedded.h"
#include "text/measure.h"

enum status text_engine_embedded(struct arena *arena, struct text_engine **out_engine)
{
	static const char *const names[TEXT_WEIGHT_COUNT] = {
		[TEXT_REGULAR] = "font/regular.ttf",
		[TEXT_BOLD] = "font/bold.ttf",
	};
	struct bytes fonts[TEXT_WEIGHT_COUNT];
	for (int i = 0; i < TEXT_WEIGHT_COUNT; i++) {
		const struct embedded *file = embedded_find(names[i]);
		if (!file)
			return STATUS_LIBRARY;
		fonts[i] = (struct bytes){file->data, file->length};
	}
	return text_engine_new(arena, fonts, out_engine);
}
