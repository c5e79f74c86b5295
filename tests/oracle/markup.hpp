// markup.hpp - a small reader of the XML that plans and records are written in.
// Knows elements, attributes, text, comments, the declaration and the five entities; throws
// std::runtime_error with the line on anything else.
#ifndef ORACLE_MARKUP_HPP
#define ORACLE_MARKUP_HPP
#include <map>
#include <string>
#include <vector>

struct Element {
	std::string name, text;
	std::map<std::string, std::string> attributes;
	std::vector<Element> children;

	bool has(const std::string &key) const
	{
		return attributes.count(key) > 0;
	}
	std::string get(const std::string &key, const std::string &otherwise = "") const;
	double number(const std::string &key) const; // throws where absent or no number
	std::vector<const Element *> all(const std::string &child) const;
};

Element parse_file(const std::string &path);
std::vector<std::string> words(const std::string &list); // by blanks
double number_of(const std::string &text);               // finite, whole text; else throws
#endif
