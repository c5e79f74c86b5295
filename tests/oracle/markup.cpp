#include "markup.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace
{

class Reader
{
      public:
	explicit Reader(std::string bytes) : text(std::move(bytes))
	{
	}

	Element document()
	{
		skip_between();
		Element root = element();
		skip_between();
		if (at < text.size())
			fail("text after the root element");
		return root;
	}

      private:
	std::string text;
	size_t at = 0;

	[[noreturn]] void fail(const std::string &what) const
	{
		size_t line = 1;
		for (size_t i = 0; i < at && i < text.size(); i++)
			line += text[i] == '\n';
		throw std::runtime_error("line " + std::to_string(line) + ": " + what);
	}

	bool starts(const char *with) const
	{
		return text.compare(at, std::string(with).size(), with) == 0;
	}

	void skip_to(const char *end)
	{
		size_t found = text.find(end, at);
		if (found == std::string::npos)
			fail(std::string("no ") + end);
		at = found + std::string(end).size();
	}

	void blanks()
	{
		while (at < text.size() && std::isspace(static_cast<unsigned char>(text[at])))
			at++;
	}

	void skip_between()
	{
		for (;;) {
			blanks();
			if (starts("<!--"))
				skip_to("-->");
			else if (starts("<?"))
				skip_to("?>");
			else
				return;
		}
	}

	std::string name()
	{
		size_t from = at;
		while (at < text.size() &&
		       (std::isalnum(static_cast<unsigned char>(text[at])) ||
		        std::string("-_.:").find(text[at]) != std::string::npos))
			at++;
		if (at == from)
			fail("a name was expected");
		return text.substr(from, at - from);
	}

	std::string plain(const std::string &raw) const
	{
		static const std::map<std::string, std::string> entities = {
			{"lt", "<"}, {"gt", ">"}, {"amp", "&"}, {"quot", "\""}, {"apos", "'"}};
		std::string result;
		for (size_t i = 0; i < raw.size(); i++) {
			if (raw[i] != '&') {
				result += raw[i];
				continue;
			}
			size_t end = raw.find(';', i);
			std::string entity =
				end == std::string::npos ? "" : raw.substr(i + 1, end - i - 1);
			if (entities.count(entity))
				result += entities.at(entity);
			else if (entity.size() > 1 && entity[0] == '#')
				result += '?'; // no check reads such a character
			else
				fail("unknown entity");
			i = end;
		}
		return result;
	}

	void attribute(Element &element)
	{
		std::string key = name();
		blanks();
		if (text[at++] != '=')
			fail("= was expected");
		blanks();
		char quote = text[at];
		if (quote != '"' && quote != '\'')
			fail("a quote was expected");
		size_t from = ++at;
		skip_to(std::string(1, quote).c_str());
		if (!element.attributes.emplace(key, plain(text.substr(from, at - from - 1)))
		             .second)
			fail("attribute " + key + " twice");
	}

	Element element()
	{
		if (at >= text.size() || text[at] != '<')
			fail("an element was expected");
		at++;
		Element result;
		result.name = name();
		for (blanks(); at < text.size() && text[at] != '>' && text[at] != '/'; blanks())
			attribute(result);
		if (starts("/>")) {
			at += 2;
			return result;
		}
		at++;
		for (;;) {
			size_t from = at;
			at = std::min(text.find('<', at), text.size());
			result.text += plain(text.substr(from, at - from));
			if (at == text.size())
				fail("end of file inside " + result.name);
			if (starts("<!--")) {
				skip_to("-->");
			} else if (starts("</")) {
				at += 2;
				if (name() != result.name)
					fail("wrong end of " + result.name);
				blanks();
				if (text[at++] != '>')
					fail("> was expected");
				return result;
			} else {
				result.children.push_back(element());
			}
		}
	}
};

} // namespace

std::string Element::get(const std::string &key, const std::string &otherwise) const
{
	auto found = attributes.find(key);
	return found == attributes.end() ? otherwise : found->second;
}

double Element::number(const std::string &key) const
{
	if (!has(key))
		throw std::runtime_error(name + " " + get("id") + " has no " + key);
	return number_of(get(key));
}

std::vector<const Element *> Element::all(const std::string &child) const
{
	std::vector<const Element *> found;
	for (const Element &e : children)
		if (e.name == child)
			found.push_back(&e);
	return found;
}

Element parse_file(const std::string &path)
{
	std::ifstream file(path, std::ios::binary);
	std::ostringstream bytes;
	bytes << file.rdbuf();
	if (!file)
		throw std::runtime_error("cannot read " + path);
	try {
		return Reader(bytes.str()).document();
	} catch (const std::runtime_error &error) {
		throw std::runtime_error(path + ": " + error.what());
	}
}

std::vector<std::string> words(const std::string &list)
{
	std::istringstream in(list);
	std::vector<std::string> result;
	for (std::string word; in >> word;)
		result.push_back(word);
	return result;
}

double number_of(const std::string &text)
{
	char *end = nullptr;
	double value = std::strtod(text.c_str(), &end);
	if (text.empty() || *end != 0 || !std::isfinite(value))
		throw std::runtime_error("no finite number: '" + text + "'");
	return value;
}
