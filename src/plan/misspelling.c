#include "plan/misspelling.h"

#include <string.h>

enum { LONGEST = 24, MOST_SLIPS = 2 };

static int least(int a, int b)
{
	return a < b ? a : b;
}

/* Edits between beginnings, row by row; the row before the last one is for swapped letters. */
static int distance(const char *a, int a_length, const char *b, int b_length)
{
	int rows[3][LONGEST + 1];
	for (int j = 0; j <= b_length; j++)
		rows[0][j] = j;
	for (int i = 1; i <= a_length; i++) {
		int *row = rows[i % 3], *above = rows[(i + 2) % 3], *higher = rows[(i + 1) % 3];
		row[0] = i;
		for (int j = 1; j <= b_length; j++) {
			row[j] = least(above[j], row[j - 1]) + 1;
			row[j] = least(row[j], above[j - 1] + (a[i - 1] != b[j - 1]));
			if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
				row[j] = least(row[j], higher[j - 2] + 1);
		}
	}
	return rows[a_length % 3][b_length];
}

bool is_misspelling(const char *written, const char *meant)
{
	size_t a_length = strlen(written), b_length = strlen(meant);
	if (a_length > LONGEST || b_length > LONGEST || a_length > b_length + MOST_SLIPS ||
	    b_length > a_length + MOST_SLIPS)
		return false;
	int slips = distance(written, (int)a_length, meant, (int)b_length);
	return slips <= MOST_SLIPS && 2 * slips < (int)b_length;
}
