/* main.c - draw_specimen STYLE FOLDER: writes the specimen of an embedded style as
 * FOLDER/specimen-STYLE.svg, .png and .pdf. */
#include <stdio.h>

#include "drawing/canvas.h"
#include "specimen/specimen.h"

static int write_file(struct arena *arena, const char *folder, const char *style, const char *end,
                      struct bytes bytes)
{
	const char *path = arena_printf(arena, "%s/specimen-%s.%s", folder, style, end);
	FILE *file = fopen(path, "wb");
	if (!file || fwrite(bytes.data, 1, bytes.length, file) != bytes.length || fclose(file)) {
		perror(path);
		return 1;
	}
	return 0;
}

static int write_all(struct arena *arena, const struct page *page, const char *folder,
                     const char *style, struct diag_list *diags)
{
	const struct document document = {"The drawing language", "Specimen", "jurystick", NULL};
	struct bytes png, pdf;
	if (canvas_png(arena, page, 150, diags, &png) != STATUS_OK ||
	    canvas_pdf(arena, &document, page, 1, diags, &pdf) != STATUS_OK)
		return 1;
	return write_file(arena, folder, style, "svg", canvas_svg(arena, page)) ||
	       write_file(arena, folder, style, "png", png) ||
	       write_file(arena, folder, style, "pdf", pdf);
}

int main(int count, char **words)
{
	struct arena *arena = arena_new();
	struct diag_list diags = diag_list_in(arena, "specimen");
	struct text_engine *text;
	struct style style;
	int status = 1;
	if (count == 3 && text_engine_embedded(arena, &text) == STATUS_OK &&
	    style_embedded(arena, words[1], 0, &diags, &style) == STATUS_OK) {
		struct specimen specimen = specimen_draw(arena, &style, text);
		const struct page page = {.name = "specimen",
		                          .title = "The drawing language",
		                          .about = "Every line, area, mark, tag, dimension and "
		                                   "height of lettering.",
		                          .language = "en",
		                          .list = specimen.list};
		status = write_all(arena, &page, words[2], words[1], &diags);
	}
	for (size_t i = 0; i < diags.diags.count; i++)
		fprintf(stderr, "%s\n", diags.diags.items[i].text);
	arena_free(arena);
	return status;
}
