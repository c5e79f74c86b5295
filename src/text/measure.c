#include "text/measure.h"

#include <stdint.h>
#include <string.h>

#include "base/array.h"
#include "text/face_ft.h"

/* Baseline to baseline in capital heights: ISO 3098-1 gives 1.5 without and 1.9 with
 * accents for type B; capitals with accents are rare in notes. */
static const double PITCH = 1.7;

enum { CACHE_START = 256 }; /* a power of two */

struct text_engine {
	struct arena *arena;
	struct face faces[TEXT_WEIGHT_COUNT];
	const struct text_run **slots; /* open addressing */
	size_t slot_count, run_count;
	ARRAY_OF(uint32_t) missing; /* code points, each once */
};

static void release_engine(void *handle)
{
	struct text_engine *engine = handle;
	for (int i = 0; i < TEXT_WEIGHT_COUNT; i++)
		face_close(&engine->faces[i]);
}

enum status text_engine_new(struct arena *arena, const struct bytes fonts[TEXT_WEIGHT_COUNT],
                            struct text_engine **out_engine)
{
	struct text_engine *engine = ARENA_NEW(arena, struct text_engine);
	engine->arena = arena;
	engine->slot_count = CACHE_START;
	engine->slots = ARENA_ARRAY(arena, const struct text_run *, CACHE_START);
	for (int i = 0; i < TEXT_WEIGHT_COUNT; i++) {
		enum status status = face_open(&engine->faces[i], fonts[i]);
		if (status) {
			while (i-- > 0)
				face_close(&engine->faces[i]);
			return status;
		}
	}
	arena_defer(arena, release_engine, engine);
	*out_engine = engine;
	return STATUS_OK;
}

const struct face *text_engine_face(const struct text_engine *engine, enum text_weight weight)
{
	return &engine->faces[weight];
}

static size_t hash_text(enum text_weight weight, const char *text)
{
	uint64_t hash = 14695981039346656037u + weight; /* FNV-1a */
	for (; *text; text++)
		hash = (hash ^ (unsigned char)*text) * 1099511628211u;
	return (size_t)hash;
}

/* The slot that holds the run, or the empty one where it belongs. */
static size_t find_slot(const struct text_run *const *slots, size_t slot_count,
                        enum text_weight weight, const char *text)
{
	size_t slot = hash_text(weight, text) & (slot_count - 1);
	while (slots[slot] &&
	       (slots[slot]->weight != weight || strcmp(slots[slot]->text, text) != 0))
		slot = (slot + 1) & (slot_count - 1);
	return slot;
}

static void grow_cache(struct text_engine *engine)
{
	size_t count = engine->slot_count * 2;
	const struct text_run **slots = ARENA_ARRAY(engine->arena, const struct text_run *, count);
	for (size_t i = 0; i < engine->slot_count; i++) {
		const struct text_run *run = engine->slots[i];
		if (run)
			slots[find_slot(slots, count, run->weight, run->text)] = run;
	}
	engine->slots = slots;
	engine->slot_count = count;
}

static uint32_t code_point_at(const char *text)
{
	const unsigned char *byte = (const unsigned char *)text;
	int more = byte[0] >= 0xF0 ? 3 : byte[0] >= 0xE0 ? 2 : byte[0] >= 0xC0 ? 1 : 0;
	uint32_t point = more ? byte[0] & (0x3Fu >> more) : byte[0];
	for (int i = 1; i <= more && byte[i]; i++)
		point = point << 6 | (byte[i] & 0x3Fu);
	return point;
}

static void note_missing(struct text_engine *engine, uint32_t point)
{
	for (size_t i = 0; i < engine->missing.count; i++)
		if (engine->missing.items[i] == point)
			return;
	*array_push(engine->arena, &engine->missing) = point;
}

/* Position, ink and text of each glyph, from what the shaper says. */
static void take_glyphs(struct text_engine *engine, struct text_run *run, hb_buffer_t *buffer)
{
	unsigned count;
	const hb_glyph_info_t *info = hb_buffer_get_glyph_infos(buffer, &count);
	const hb_glyph_position_t *position = hb_buffer_get_glyph_positions(buffer, &count);
	const struct face *face = &engine->faces[run->weight];
	struct text_glyph *glyphs = ARENA_ARRAY(engine->arena, struct text_glyph, count);
	unsigned length = (unsigned)strlen(run->text);
	int pen = 0;
	for (unsigned i = 0; i < count; i++) {
		unsigned next = i + 1 < count ? info[i + 1].cluster : length;
		glyphs[i] =
			(struct text_glyph){info[i].codepoint, pen + position[i].x_offset,
		                            position[i].y_offset, info[i].cluster,
		                            next > info[i].cluster ? next - info[i].cluster : 0};
		pen += position[i].x_advance;
		if (info[i].codepoint == 0) {
			run->missing++;
			note_missing(engine, code_point_at(run->text + info[i].cluster));
		}
		hb_glyph_extents_t ink;
		if (!hb_font_get_glyph_extents(face->shaper, info[i].codepoint, &ink) || !ink.width)
			continue;
		int left = glyphs[i].x + ink.x_bearing, top = glyphs[i].y + ink.y_bearing;
		run->left = left < run->left ? left : run->left;
		run->right = left + ink.width > run->right ? left + ink.width : run->right;
		run->top = top > run->top ? top : run->top;
		run->bottom = top + ink.height < run->bottom ? top + ink.height : run->bottom;
	}
	run->glyphs = glyphs;
	run->glyph_count = count;
	run->advance = pen;
}

static struct text_run *shape(struct text_engine *engine, enum text_weight weight, char *text)
{
	struct text_run *run = ARENA_NEW(engine->arena, struct text_run);
	run->text = text;
	run->weight = weight;
	hb_buffer_t *buffer = hb_buffer_create();
	hb_buffer_add_utf8(buffer, text, -1, 0, -1);
	/* All the words of a sheet run left to right; a guess from the text could depend on
	 * the process's locale. */
	hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
	hb_buffer_set_script(buffer, HB_SCRIPT_LATIN);
	hb_buffer_set_language(buffer, hb_language_from_string("en", -1));
	/* No ligatures: each sign of a value or an id stays one sign. */
	const hb_feature_t features[] = {{HB_TAG('l', 'i', 'g', 'a'), 0, 0, (unsigned)-1},
	                                 {HB_TAG('c', 'l', 'i', 'g'), 0, 0, (unsigned)-1}};
	hb_shape(engine->faces[weight].shaper, buffer, features, 2);
	take_glyphs(engine, run, buffer);
	hb_buffer_destroy(buffer);
	return run;
}

static char *without_controls(struct arena *arena, const char *text)
{
	char *copy = arena_strdup(arena, text);
	for (char *c = copy; *c; c++)
		if ((unsigned char)*c < ' ')
			*c = ' ';
	return copy;
}

const struct text_run *text_shape(struct text_engine *engine, enum text_weight weight,
                                  const char *text)
{
	size_t slot = find_slot(engine->slots, engine->slot_count, weight, text);
	if (engine->slots[slot])
		return engine->slots[slot];
	char *copy = without_controls(engine->arena, text);
	slot = find_slot(engine->slots, engine->slot_count, weight, copy);
	if (engine->slots[slot])
		return engine->slots[slot];
	const struct text_run *run = shape(engine, weight, copy);
	engine->slots[slot] = run;
	if (++engine->run_count * 2 > engine->slot_count)
		grow_cache(engine);
	return run;
}

double text_scale(const struct text_engine *engine, enum text_weight weight, double cap)
{
	return cap / engine->faces[weight].cap;
}

double text_em(const struct text_engine *engine, enum text_weight weight)
{
	return engine->faces[weight].upem / (double)engine->faces[weight].cap;
}

double text_width(struct text_engine *engine, enum text_weight weight, double cap, const char *text)
{
	return text_shape(engine, weight, text)->advance * text_scale(engine, weight, cap);
}

double text_descent(const struct text_engine *engine, enum text_weight weight, double cap)
{
	return engine->faces[weight].descent * text_scale(engine, weight, cap);
}

double text_pitch(double cap)
{
	return PITCH * cap;
}

static void add_code_point(struct strbuf *out, uint32_t point)
{
	if (point < 0x80) {
		strbuf_add_char(out, (char)point);
		return;
	}
	int more = point < 0x800 ? 1 : point < 0x10000 ? 2 : 3;
	static const unsigned char lead[] = {0, 0xC0, 0xE0, 0xF0};
	strbuf_add_char(out, (char)(lead[more] | point >> (6 * more)));
	while (more-- > 0)
		strbuf_add_char(out, (char)(0x80 | (point >> (6 * more) & 0x3F)));
}

const char *text_missing(const struct text_engine *engine)
{
	if (engine->missing.count == 0)
		return NULL;
	struct strbuf out = strbuf_in(engine->arena);
	for (size_t i = 0; i < engine->missing.count; i++) {
		if (i > 0)
			strbuf_add_char(&out, ' ');
		add_code_point(&out, engine->missing.items[i]);
	}
	return out.text;
}
