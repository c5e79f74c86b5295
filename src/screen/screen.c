#include "screen/screen.h"

#include "base/embedded.h"
#include "screen/screen_part.h"
#include "units/number.h"

/* ---- head: looks and program, both from embedded files ---- */

static void add_file(struct screen *s, const char *name)
{
	const struct embedded *file = embedded_find(name);
	strbuf_add_bytes(&s->out, file->data, file->length);
}

/* Nothing may be fetched, whatever a text of the plan says. */
static const char POLICY[] =
	"default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; "
	"base-uri 'none'; form-action 'none'";

/* The paper of a print is that of the sheets. */
static void add_paper(struct screen *s)
{
	const struct list *list = s->set->pages[0].list;
	const char *wide = number_text(s->draft->arena, list->width, 3);
	const char *high = number_text(s->draft->arena, list->height, 3);
	strbuf_printf(&s->out,
	              "@page{size:%smm %smm;margin:0}\n"
	              ":root{--wide:%s;--high:%s}\n",
	              wide, high, wide, high);
}

/* A browser reads what stands in these two as it is, an XML parser not: so both see a comment
 * round the marks that keep XML from reading it. */
static void add_head(struct screen *s)
{
	html_start(&s->out, "head", HTML_NONE);
	strbuf_add(&s->out,
	           "<meta charset=\"utf-8\"/>\n<meta http-equiv=\"Content-Security-Policy\" ");
	strbuf_printf(&s->out, "content=\"%s\"/>\n", POLICY);
	strbuf_add(&s->out,
	           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
	html_text(&s->out, "title", s->set->document.title, HTML_NONE);
	strbuf_add(&s->out, "<style>/*<![CDATA[*/\n");
	add_paper(s);
	add_file(s, "screen/page.css");
	add_file(s, "screen/print.css");
	strbuf_add(&s->out, "/*]]>*/</style>\n");
	html_end(&s->out, "head");
}

static void add_program(struct screen *s)
{
	static const char *const FILES[] = {"screen/stage.js", "screen/choice.js",
	                                    "screen/layers.js", "screen/page.js"};
	strbuf_add(&s->out, "<script>/*<![CDATA[*/\n");
	for (size_t i = 0; i < sizeof FILES / sizeof *FILES; i++)
		add_file(s, FILES[i]);
	strbuf_add(&s->out, "/*]]>*/</script>\n");
}

/* ---- top: what floor, in what state; the parts of the page on a narrow screen ---- */

static void add_job(struct screen *s)
{
	const struct draft *draft = s->draft;
	const struct plan *plan = draft->site->plan;
	struct strbuf text = strbuf_in(draft->arena);
	if (plan->job != NULL) {
		const char *parts[] = {plan->job->number, plan->job->site,
		                       draft_date(draft, plan->job->date)};
		for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
			if (parts[i] != NULL && *parts[i] != '\0')
				strbuf_printf(&text, "%s%s", text.length ? " · " : "", parts[i]);
	}
	if (plan->revision_count > 0)
		strbuf_printf(&text, "%s%s %s", text.length ? " · " : "",
		              draft_word(draft, "block.revision"),
		              plan->revisions[plan->revision_count - 1].mark);
	if (text.length > 0)
		html_text(&s->out, "p", text.text, {"class", "job"});
}

static void add_tabs(struct screen *s)
{
	static const char *const TABS[][2] = {{"sheets", "page.sheets"},
	                                      {"layers", "page.layers"},
	                                      {"questions", "page.tab-questions"},
	                                      {"elements", "page.tab-elements"}};
	html_start(&s->out, "div", {"class", "tabs"});
	for (size_t i = 0; i < sizeof TABS / sizeof *TABS; i++)
		html_text(&s->out, "button", draft_word(s->draft, TABS[i][1]), {"type", "button"},
		          {"aria-controls", TABS[i][0]}, {"aria-expanded", "false"});
	html_end(&s->out, "div");
}

static void add_top(struct screen *s)
{
	const struct draft *draft = s->draft;
	bool stopped = findings_is_stopped(draft->findings);
	html_text(&s->out, "a", draft_word(draft, "page.skip"), {"class", "skip"},
	          {"href", "#drawings"});
	html_start(&s->out, "header", HTML_NONE);
	html_text(&s->out, "h1", s->set->document.title, HTML_NONE);
	add_job(s);
	html_text(&s->out, "p", draft_word(draft, stopped ? "status.proposed" : "status.proposal"),
	          {"class", stopped ? "state stopped" : "state"});
	html_text(&s->out, "button", draft_word(draft, "page.print"), {"type", "button"},
	          {"id", "print"}, {"class", "live-only"});
	html_end(&s->out, "header");
	add_tabs(s);
}

static void add_contents(struct screen *s)
{
	html_start(&s->out, "nav", {"id", "sheets"}, {"class", "panel"},
	           {"aria-labelledby", "sheets-head"});
	html_text(&s->out, "h2", draft_word(s->draft, "page.sheets"), {"id", "sheets-head"},
	          {"tabindex", "-1"});
	html_start(&s->out, "ol", HTML_NONE);
	for (size_t i = 0; i < s->set->page_count; i++) {
		html_start(&s->out, "li", HTML_NONE);
		html_text(&s->out, "a", s->set->pages[i].title,
		          {"href", arena_printf(s->draft->arena, "#%s", screen_sheet_id(s, i))});
		html_end(&s->out, "li");
	}
	html_end(&s->out, "ol");
	html_end(&s->out, "nav");
}

/* ---- what is seen on the sheets ---- */

static bool is_used(const struct sheet_set *set, enum layer layer)
{
	for (size_t i = 0; i < set->page_count; i++) {
		const struct list *list = set->pages[i].list;
		for (size_t k = 0; k < list->ops.count; k++)
			if (list->ops.items[k].layer == layer)
				return true;
	}
	return false;
}

static void add_switch(struct screen *s, const char *attribute, const char *name, bool is_on)
{
	const char *key = arena_printf(s->draft->arena, "page.layer.%s", name);
	html_start(&s->out, "label", HTML_NONE);
	strbuf_printf(&s->out, "<input type=\"checkbox\" data-%s=\"%s\"%s/>", attribute, name,
	              is_on ? " checked=\"checked\"" : "");
	html_text(&s->out, "span", draft_word(s->draft, key), HTML_NONE);
	html_end(&s->out, "label");
}

static void add_layers(struct screen *s)
{
	html_start(&s->out, "section", {"id", "layers"}, {"class", "panel live-only"},
	           {"aria-labelledby", "layers-head"});
	html_text(&s->out, "h2", draft_word(s->draft, "page.layers"), {"id", "layers-head"},
	          {"tabindex", "-1"});
	add_switch(s, "pins", "question", true);
	add_switch(s, "pins", "note", false);
	for (int i = 0; i < LAYER_COUNT; i++)
		if (is_used(s->set, (enum layer)i))
			add_switch(s, "switch", layer_name((enum layer)i), true);
	html_end(&s->out, "section");
}

static void add_tool(struct screen *s, const char *tool, const char *sign, const char *key)
{
	const char *about = draft_word(s->draft, key);
	html_text(&s->out, "button", sign, {"type", "button"}, {"data-tool", tool},
	          {"aria-label", about}, {"title", about});
}

static void add_main(struct screen *s)
{
	html_start(&s->out, "main", {"id", "drawings"}, {"tabindex", "-1"});
	html_start(&s->out, "div", {"class", "tools live-only"}, {"role", "toolbar"},
	           {"aria-label", draft_word(s->draft, "page.tools")});
	add_tool(s, "previous", "‹", "page.previous");
	html_text(&s->out, "output", "", {"id", "shown"});
	add_tool(s, "next", "›", "page.next");
	add_tool(s, "out", "−", "page.zoom-out");
	add_tool(s, "fit", "□", "page.zoom-fit");
	add_tool(s, "in", "+", "page.zoom-in");
	html_end(&s->out, "div");
	screen_add_sheets(s);
	html_text(&s->out, "p", draft_word(s->draft, "page.keys"), {"id", "keys"},
	          {"class", "live-only"});
	html_text(&s->out, "p", "", {"id", "told"}, {"role", "status"});
	html_end(&s->out, "main");
}

struct bytes screen_write(const struct draft *draft, const struct sheet_set *set,
                          const struct markup *plan)
{
	struct screen s = {.draft = draft,
	                   .set = set,
	                   .elements = elements_of(draft, set, plan),
	                   .out = strbuf_in(draft->arena)};
	const char *language = words_language(draft->words);
	s.places = places_of(draft, set, &s.elements);
	screen_number_findings(&s);
	strbuf_add(&s.out, "<!DOCTYPE html>\n");
	html_start(&s.out, "html", {"xmlns", "http://www.w3.org/1999/xhtml"}, {"lang", language},
	           {"xml:lang", language});
	add_head(&s);
	html_start(&s.out, "body", HTML_NONE);
	add_top(&s);
	add_contents(&s);
	add_layers(&s);
	add_main(&s);
	screen_add_findings(&s);
	screen_add_elements(&s);
	add_program(&s);
	html_end(&s.out, "body");
	html_end(&s.out, "html");
	return strbuf_bytes(&s.out);
}
