// report.hpp - one line a check: `ok NAME: figures` or `FAIL NAME: figures`.
#ifndef ORACLE_REPORT_HPP
#define ORACLE_REPORT_HPP
#include <cstdarg>
#include <string>

class Report
{
      public:
	void check(bool ok, const char *name, const char *format, ...)
		__attribute__((format(printf, 4, 5)));
	int checks = 0, failed = 0;
	long cases = 0; // single comparisons behind the checks
};
#endif
