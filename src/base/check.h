/* check.h - compiler checks that every module switches on for its functions.
 * Nothing here exists at run time. */
#ifndef BASE_CHECK_H
#define BASE_CHECK_H

#define CHECK_USED __attribute__((warn_unused_result))
#define CHECK_PRINTF(format, first) __attribute__((__format__(__printf__, format, first)))
#define CHECK_NO_RETURN __attribute__((noreturn))

#endif
