/* publish.h - puts finished outputs where they belong, as a set: all or nothing.
 * All bytes are written to temporaries in the target folders and synced before the first
 * rename; on any fault, and on SIGINT or SIGTERM, the temporaries are removed and older
 * files stay as they were. Modes: the old file's, else as umask has it.
 * Fails: STATUS_OUTPUT with the reason in `diags` (line 0, file the path at fault). */
#ifndef CLI_PUBLISH_H
#define CLI_PUBLISH_H
#include <stddef.h>

#include "base/diag.h"
#include "base/status.h"
#include "base/strbuf.h"

struct output_file {
	const char *name;
	struct bytes bytes;
};

/* Names are within `folder`, which is made where only it is missing, not its parents; NULL is
 * standard output. */
CHECK_USED enum status publish_set(const char *folder, const struct output_file *files,
                                   size_t count, struct diag_list *);
/* Each name is a path of its own, NULL is standard output. A device, a pipe and standard
 * output are written directly, once all temporaries stand. */
CHECK_USED enum status publish_files(const struct output_file *files, size_t count,
                                     struct diag_list *);
CHECK_USED enum status publish_stdout(struct bytes, struct diag_list *);

#endif
