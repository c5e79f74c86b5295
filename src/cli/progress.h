/* progress.h - what long work is doing, on standard error when a person is watching.
 * Prints nothing where standard error is no terminal. */
#ifndef CLI_PROGRESS_H
#define CLI_PROGRESS_H

/* Replaces what was said before; "" clears the line. */
void progress_say(const char *text);

#endif
