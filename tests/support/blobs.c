#include "support/blobs.h"

#include <stdlib.h>
#include <string.h>

static struct tones blank(struct arena *arena, int width, int height)
{
	struct tones t = {width, height, arena_alloc(arena, (size_t)width * (size_t)height)};
	memset(t.dark, 0, (size_t)width * (size_t)height);
	return t;
}

struct tones tones_of(struct arena *arena, const struct pixels *p, int dpi, struct paper_box box)
{
	double per_mm = dpi / 25.4;
	int x0 = (int)ceil(box.x0 * per_mm), y0 = (int)ceil(box.y0 * per_mm);
	struct tones t = blank(arena, (int)(box.x1 * per_mm) - x0, (int)(box.y1 * per_mm) - y0);
	for (int y = 0; y < t.height; y++)
		for (int x = 0; x < t.width; x++)
			t.dark[y * t.width + x] = p->grey[(y + y0) * p->width + x + x0] < 128;
	return t;
}

struct tones tones_grown(struct arena *arena, struct tones t, int radius)
{
	struct tones grown = blank(arena, t.width, t.height);
	for (int y = 0; y < t.height; y++)
		for (int x = 0; x < t.width; x++) {
			if (!t.dark[y * t.width + x])
				continue;
			for (int dy = -radius; dy <= radius; dy++)
				for (int dx = -radius; dx <= radius; dx++)
					if (dx * dx + dy * dy <= radius * radius && x + dx >= 0 &&
					    x + dx < t.width && y + dy >= 0 && y + dy < t.height)
						grown.dark[(y + dy) * t.width + x + dx] = 1;
		}
	return grown;
}

struct tones tones_turned(struct arena *arena, struct tones t)
{
	struct tones turned = blank(arena, t.width, t.height);
	for (int i = 0; i < t.width * t.height; i++)
		turned.dark[i] = !t.dark[i];
	return turned;
}

static void wipe(struct tones t, int *stack, int start)
{
	int depth = 0;
	stack[depth++] = start;
	t.dark[start] = 0;
	while (depth > 0) {
		int at = stack[--depth], x = at % t.width, y = at / t.width;
		for (int dy = -1; dy <= 1; dy++)
			for (int dx = -1; dx <= 1; dx++) {
				int next = (y + dy) * t.width + x + dx;
				if (x + dx < 0 || x + dx >= t.width || y + dy < 0 ||
				    y + dy >= t.height || !t.dark[next])
					continue;
				t.dark[next] = 0;
				stack[depth++] = next;
			}
	}
}

int tones_blobs(struct arena *arena, struct tones t)
{
	struct tones left = tones_turned(arena, tones_turned(arena, t));
	int *stack = arena_alloc(arena, sizeof *stack * (size_t)(t.width * t.height));
	int count = 0;
	for (int i = 0; i < t.width * t.height; i++)
		if (left.dark[i]) {
			wipe(left, stack, i);
			count++;
		}
	return count;
}

double tones_share(struct tones t)
{
	int dark = 0;
	for (int i = 0; i < t.width * t.height; i++)
		dark += t.dark[i];
	return (double)dark / (t.width * t.height);
}

double tones_runs(struct tones t, int dpi, enum scan scan)
{
	static const struct {
		int dx, dy;
		double step;
	} ways[SCAN_COUNT] = {{1, 0, 1}, {0, 1, 1}, {1, -1, 1.41421356}, {1, 1, 1.41421356}};
	int runs = 0;
	for (int y = 0; y < t.height; y++)
		for (int x = 0; x < t.width; x++) {
			int px = x - ways[scan].dx, py = y - ways[scan].dy;
			bool was = px >= 0 && px < t.width && py >= 0 && py < t.height &&
			           t.dark[py * t.width + px];
			runs += t.dark[y * t.width + x] && !was;
		}
	return runs / (t.width * t.height * ways[scan].step / dpi * 25.4);
}
