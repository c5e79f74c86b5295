/* status.h - how a function that can fail says so.
 * The detail of a failure goes to the job's diagnostics (diag.h); the status only
 * tells the caller which way to turn. Translated to an exit code in cli alone. */
#ifndef BASE_STATUS_H
#define BASE_STATUS_H

enum status {
	STATUS_OK = 0,
	STATUS_INPUT,   /* plan or command line wrong: exit 2 */
	STATUS_OUTPUT,  /* an output could not be written: exit 3 */
	STATUS_LIBRARY, /* a foreign library failed where it should not: exit 3 */
};

#endif
