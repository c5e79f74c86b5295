#include "units/length.h"

#include <math.h>
#include <string.h>

#include "units/number.h"

enum {
	NM_PER_UM = 1000,
	NM_PER_MIL = 25400,
	NM_PER_MM = 1000000,
	NM_PER_CM = 10000000,
	NM_PER_IN = 25400000,
	NM_PER_FT = 304800000,
	NM_PER_M = 1000000000,
	MOST_DIGITS = 9, /* a product with NM_PER_M still fits 64 bits */
};

struct reading {
	const char *at;
	const char *wrong;
};

static bool fail(struct reading *r, const char *wrong)
{
	if (!r->wrong)
		r->wrong = wrong;
	return false;
}

static void skip_blanks(struct reading *r)
{
	while (*r->at == ' ')
		r->at++;
}

static bool take(struct reading *r, const char *word)
{
	size_t length = strlen(word);
	if (strncmp(r->at, word, length) != 0)
		return false;
	r->at += length;
	return true;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* A number as written: whole + part / scale, or, where there is a fraction, whole + num/den. */
struct written {
	int64_t whole, num, den;
	bool is_fraction;
};

static bool take_digits(struct reading *r, int64_t *out_value, int *out_count)
{
	*out_value = 0;
	for (*out_count = 0; is_digit(*r->at); r->at++, ++*out_count) {
		if (*out_count == MOST_DIGITS)
			return fail(r, "has too many digits");
		*out_value = *out_value * 10 + (*r->at - '0');
	}
	return true;
}

static bool take_fraction_tail(struct reading *r, int64_t num, struct written *out)
{
	int count;
	int64_t den;
	if (!take_digits(r, &den, &count))
		return false;
	if (count == 0 || den == 0)
		return fail(r, "has a fraction without a denominator");
	out->num = num;
	out->den = den;
	out->is_fraction = true;
	return true;
}

/* 12, 12.5, .5, 1/2, 6 1/2 */
static bool take_number(struct reading *r, struct written *out)
{
	int count, more;
	int64_t first;
	*out = (struct written){.den = 1};
	if (!take_digits(r, &first, &count))
		return false;
	if (*r->at == ',')
		return fail(r, "has a thousands sign or a decimal comma");
	if (count && take(r, "/"))
		return take_fraction_tail(r, first, out);
	out->whole = first;
	if (take(r, ".")) {
		if (!take_digits(r, &out->num, &more))
			return false;
		for (int i = 0; i < more; i++)
			out->den *= 10;
		return count + more > 0 || fail(r, "is not a number");
	}
	if (count == 0)
		return fail(r, "is not a number");
	/* A blank or hyphen and digits with a slash: the fraction of a mixed number. */
	const char *before = r->at;
	if (*r->at != ' ' && *r->at != '-')
		return true;
	r->at++;
	skip_blanks(r);
	if (is_digit(*r->at) && take_digits(r, &first, &count) && take(r, "/"))
		return take_fraction_tail(r, first, out);
	r->at = before;
	return !r->wrong;
}

/* Nearest whole nanometre. */
static int64_t in_nm(struct written w, int64_t unit)
{
	return w.whole * unit + (w.num * unit + w.den / 2) / w.den;
}

struct unit {
	const char *word;
	int64_t nm;
	bool is_foot;
	bool takes_fraction;
};

/* Longer words before their beginnings. */
static const struct unit UNITS[] = {
	{"mm", NM_PER_MM, false, false},         {"mil", NM_PER_MIL, false, false},
	{"cm", NM_PER_CM, false, false},         {"um", NM_PER_UM, false, false},
	{"m", NM_PER_M, false, false},           {"in", NM_PER_IN, false, true},
	{"\"", NM_PER_IN, false, true},          {"\xe2\x80\xb3", NM_PER_IN, false, true},
	{"ft", NM_PER_FT, true, true},           {"'", NM_PER_FT, true, true},
	{"\xe2\x80\xb2", NM_PER_FT, true, true},
};

static const struct unit *take_unit(struct reading *r)
{
	for (size_t i = 0; i < sizeof UNITS / sizeof *UNITS; i++)
		if (take(r, UNITS[i].word))
			return &UNITS[i];
	return NULL;
}

static bool take_inches_after_feet(struct reading *r, int64_t *nm)
{
	struct written inches;
	const char *feet_end = r->at;
	skip_blanks(r);
	bool is_apart = r->at > feet_end;
	if (take(r, "-")) {
		if (is_apart && *r->at != ' ')
			return fail(r, "has a minus sign inside");
		skip_blanks(r);
	}
	if (!take_number(r, &inches))
		return false;
	skip_blanks(r);
	const struct unit *unit = take_unit(r);
	if (!unit || unit->nm != NM_PER_IN)
		return fail(r, "has something other than inches after the feet");
	*nm += in_nm(inches, NM_PER_IN);
	return true;
}

static int64_t nm_of_bare(enum length_unit unit)
{
	static const int64_t nm[] = {[LENGTH_MM] = NM_PER_MM,
	                             [LENGTH_M] = NM_PER_M,
	                             [LENGTH_IN] = NM_PER_IN,
	                             [LENGTH_FT] = NM_PER_FT};
	return nm[unit];
}

static bool take_length(struct reading *r, enum length_unit bare, int64_t *nm)
{
	struct written number;
	if (!take_number(r, &number))
		return false;
	skip_blanks(r);
	if (!*r->at) {
		*nm = in_nm(number, nm_of_bare(bare));
		return !number.is_fraction || fail(r, "is a fraction without a unit");
	}
	if (*r->at == 'e' || *r->at == 'E')
		return fail(r, "has an exponent");
	const struct unit *unit = take_unit(r);
	if (!unit)
		return fail(r, "has no unit known here (mm cm m um in ft mil)");
	if (number.is_fraction && !unit->takes_fraction)
		return fail(r, "has a fraction of a metric unit");
	*nm = in_nm(number, unit->nm);
	if (unit->is_foot && r->at[strspn(r->at, " ")] && !take_inches_after_feet(r, nm))
		return false;
	skip_blanks(r);
	return !*r->at || fail(r, "goes on after its unit");
}

bool length_parse(const char *text, enum length_unit unit, int64_t *out_nm, const char **out_wrong)
{
	struct reading r = {.at = text};
	skip_blanks(&r);
	bool negative = take(&r, "-");
	int64_t nm;
	if (!*r.at)
		fail(&r, "is empty");
	if (r.wrong || !take_length(&r, unit, &nm)) {
		*out_wrong = r.wrong;
		return false;
	}
	*out_nm = negative ? -nm : nm;
	return true;
}

static void add_fraction(struct strbuf *buf, long over, long denominator)
{
	while (over % 2 == 0 && denominator % 2 == 0) {
		over /= 2;
		denominator /= 2;
	}
	strbuf_printf(buf, "%ld/%ld", over, denominator);
}

void length_add_feet_inches(struct strbuf *buf, double mm, int denominator)
{
	long steps = lround(fabs(mm) / LENGTH_MM_PER_INCH * denominator);
	long per_foot = 12L * denominator;
	long feet = steps / per_foot, inches = steps % per_foot / denominator,
	     over = steps % denominator;
	if (mm < 0 && steps)
		strbuf_add_char(buf, '-');
	if (feet)
		strbuf_printf(buf, "%ld'-", feet);
	if (inches || feet || !over)
		strbuf_printf(buf, "%ld", inches);
	if (over) {
		if (inches || feet)
			strbuf_add_char(buf, ' ');
		add_fraction(buf, over, denominator);
	}
	strbuf_add_char(buf, '"');
}

void length_add_mm(struct strbuf *buf, double mm, int decimals)
{
	number_add(buf, mm, decimals);
}

const char *length_text(struct arena *arena, double mm, bool inches)
{
	struct strbuf buf = strbuf_in(arena);
	if (inches)
		length_add_feet_inches(&buf, mm, 16);
	else {
		length_add_mm(&buf, mm, 0);
		strbuf_add(&buf, " mm");
	}
	return buf.text;
}
