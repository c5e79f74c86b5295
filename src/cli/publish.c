#include "cli/publish.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { MODE_NEW = 0666, MODE_FOLDER = 0777, MODE_BITS = 0777 };

/* One output on its way. */
struct transfer {
	struct bytes bytes;
	const char *path;   /* NULL: standard output */
	const char *folder; /* of the path */
	char *temporary;    /* holds the new bytes until the rename; NULL: written directly */
	char *backup;       /* second name of the old file while the set is renamed */
	bool is_renamed;
};

struct publisher {
	struct arena *arena;
	struct diag_list *diags;
	struct transfer *transfers;
	size_t count;
	sigset_t old_mask;
	struct sigaction old_size, old_pipe;
};

static enum status fail(struct publisher *p, const char *path, const char *what)
{
	const char *reason = strerror(errno);
	diag_error(p->diags, 0, "%s: %s: %s", path, what, reason);
	return STATUS_OUTPUT;
}

/* ---- signals: an end asked for while temporaries exist waits until they are gone ---- */

static void hold_signals(struct publisher *p)
{
	const struct sigaction ignore = {.sa_handler = SIG_IGN};
	sigset_t held;
	sigemptyset(&held);
	sigaddset(&held, SIGINT);
	sigaddset(&held, SIGTERM);
	sigaddset(&held, SIGHUP);
	sigprocmask(SIG_BLOCK, &held, &p->old_mask);
	/* A full quota or a closed pipe comes back as an error of write, not as an end. */
	sigaction(SIGXFSZ, &ignore, &p->old_size);
	sigaction(SIGPIPE, &ignore, &p->old_pipe);
}

static bool is_end_asked(void)
{
	sigset_t pending;
	return sigpending(&pending) == 0 &&
	       (sigismember(&pending, SIGINT) || sigismember(&pending, SIGTERM) ||
	        sigismember(&pending, SIGHUP));
}

/* An end that was asked for comes now. */
static void release_signals(struct publisher *p)
{
	sigaction(SIGXFSZ, &p->old_size, NULL);
	sigaction(SIGPIPE, &p->old_pipe, NULL);
	sigprocmask(SIG_SETMASK, &p->old_mask, NULL);
}

/* ---- writing ---- */

static bool write_all(int fd, struct bytes bytes)
{
	enum { CHUNK = 1 << 20 }; /* so that an end asked for is seen soon */
	const char *data = bytes.data;
	size_t left = bytes.length;
	while (left > 0) {
		ssize_t done = write(fd, data, left < CHUNK ? left : CHUNK);
		if (done < 0 && errno == EINTR)
			continue;
		if (done < 0)
			return false;
		data += done;
		left -= (size_t)done;
		if (is_end_asked()) {
			errno = EINTR;
			return false;
		}
	}
	return true;
}

static bool sync_folder(const char *folder)
{
	int fd = open(folder, O_RDONLY | O_DIRECTORY);
	if (fd < 0)
		return false;
	/* Some file systems cannot sync a folder; then there is nothing more to do. */
	bool is_done = fsync(fd) == 0 || errno == EINVAL;
	return close(fd) == 0 && is_done;
}

static mode_t mode_for(const char *path)
{
	struct stat old;
	if (stat(path, &old) == 0 && S_ISREG(old.st_mode))
		return old.st_mode & MODE_BITS;
	mode_t mask = umask(0);
	umask(mask);
	return MODE_NEW & ~mask;
}

static char *temporary_name(struct publisher *p, const struct transfer *t)
{
	return arena_printf(p->arena, "%s/.jurystick-XXXXXX", t->folder);
}

static enum status write_temporary(struct publisher *p, struct transfer *t)
{
	char *name = temporary_name(p, t);
	int fd = mkstemp(name);
	if (fd < 0)
		return fail(p, t->path, "cannot be written");
	t->temporary = name;
	bool is_written =
		write_all(fd, t->bytes) && fchmod(fd, mode_for(t->path)) == 0 && fsync(fd) == 0;
	int reason = errno;
	bool is_closed = close(fd) == 0;
	if (is_written && is_closed)
		return STATUS_OK;
	errno = is_written ? errno : reason;
	return fail(p, t->path, "cannot be written");
}

static enum status write_direct(struct publisher *p, const char *path, struct bytes bytes)
{
	int fd = open(path, O_WRONLY | O_NOCTTY);
	bool is_written = fd >= 0 && write_all(fd, bytes);
	int reason = errno;
	bool is_closed = fd < 0 || close(fd) == 0;
	if (is_written && is_closed)
		return STATUS_OK;
	errno = is_written ? errno : reason;
	return fail(p, path, "cannot be written");
}

/* What stdio holds comes first; then a copy is closed, for some errors show only there. */
static enum status write_stdout(struct publisher *p, struct bytes bytes)
{
	bool is_written = fflush(stdout) == 0 && write_all(STDOUT_FILENO, bytes);
	int copy = is_written ? dup(STDOUT_FILENO) : -1;
	bool is_closed = copy >= 0 && close(copy) == 0;
	return is_written && is_closed ? STATUS_OK
	                               : fail(p, "standard output", "cannot be written");
}

/* A device, a pipe or a socket has no name to swap under it. */
static bool is_special(const char *path)
{
	struct stat st;
	return !path || (stat(path, &st) == 0 && !S_ISREG(st.st_mode) && !S_ISDIR(st.st_mode));
}

static enum status check_target(struct publisher *p, const char *path)
{
	struct stat st;
	if (path && stat(path, &st) == 0 && S_ISDIR(st.st_mode)) {
		errno = EISDIR;
		return fail(p, path, "cannot be written");
	}
	return STATUS_OK;
}

/* ---- the set ---- */

static enum status write_temporaries(struct publisher *p)
{
	for (size_t i = 0; i < p->count; i++) {
		enum status status = check_target(p, p->transfers[i].path);
		if (!status && !is_special(p->transfers[i].path))
			status = write_temporary(p, &p->transfers[i]);
		if (status)
			return status;
	}
	return STATUS_OK;
}

static enum status write_specials(struct publisher *p)
{
	for (size_t i = 0; i < p->count; i++) {
		const struct transfer *t = &p->transfers[i];
		if (t->temporary)
			continue;
		enum status status =
			t->path ? write_direct(p, t->path, t->bytes) : write_stdout(p, t->bytes);
		if (status)
			return status;
	}
	return STATUS_OK;
}

/* The old file keeps a second name until the whole set stands; where the file system has no
 * second names, it is moved to the other one. No old file needs none. */
static bool keep_old(struct publisher *p, struct transfer *t)
{
	char *name = temporary_name(p, t);
	int fd = mkstemp(name);
	if (fd < 0)
		return false;
	close(fd);
	unlink(name);
	if (link(t->path, name) != 0 && errno != ENOENT && rename(t->path, name) != 0)
		return false;
	if (access(name, F_OK) == 0)
		t->backup = name;
	return true;
}

static enum status rename_all(struct publisher *p)
{
	for (size_t i = 0; i < p->count; i++) {
		struct transfer *t = &p->transfers[i];
		if (!t->temporary)
			continue;
		if (!keep_old(p, t) || rename(t->temporary, t->path) != 0)
			return fail(p, t->path, "cannot be replaced");
		t->is_renamed = true;
	}
	return STATUS_OK;
}

static enum status sync_folders(struct publisher *p)
{
	for (size_t i = 0; i < p->count; i++) {
		const struct transfer *t = &p->transfers[i];
		bool is_synced = i > 0 && t->temporary && p->transfers[i - 1].temporary &&
		                 strcmp(t->folder, p->transfers[i - 1].folder) == 0;
		if (t->temporary && !is_synced && !sync_folder(t->folder))
			return fail(p, t->folder, "cannot be synced");
	}
	return STATUS_OK;
}

/* Of two names of one file a rename does nothing, so the second name goes by itself. Where
 * the rename fails, the backup may be all that is left of the old file: it stays. */
static void put_back(struct transfer *t)
{
	if (t->backup) {
		if (rename(t->backup, t->path) == 0)
			unlink(t->backup);
	} else if (t->is_renamed)
		unlink(t->path);
	if (t->temporary && !t->is_renamed)
		unlink(t->temporary);
}

static enum status transfer_set(struct publisher *p)
{
	hold_signals(p);
	enum status status = write_temporaries(p);
	if (!status)
		status = write_specials(p);
	if (!status)
		status = rename_all(p);
	if (!status)
		status = sync_folders(p);
	for (size_t i = 0; i < p->count; i++) {
		if (status)
			put_back(&p->transfers[i]);
		else if (p->transfers[i].backup)
			unlink(p->transfers[i].backup);
	}
	release_signals(p);
	return status;
}

static struct publisher publisher_for(size_t count, struct diag_list *diags)
{
	return (struct publisher){.arena = diags->arena,
	                          .diags = diags,
	                          .transfers = ARENA_ARRAY(diags->arena, struct transfer, count),
	                          .count = count};
}

enum status publish_set(const char *folder, const struct output_file *files, size_t count,
                        struct diag_list *diags)
{
	struct publisher p = publisher_for(count, diags);
	for (size_t i = 0; i < count; i++) {
		struct transfer *t = &p.transfers[i];
		*t = (struct transfer){.bytes = files[i].bytes};
		if (!files[i].name)
			continue;
		t->path = arena_printf(p.arena, "%s/%s", folder, files[i].name);
		t->folder = folder;
	}
	struct stat st;
	bool is_made = stat(folder, &st) != 0 && errno == ENOENT && mkdir(folder, MODE_FOLDER) == 0;
	if (!is_made && stat(folder, &st) != 0)
		return fail(&p, folder, "cannot be made");
	if (!is_made && !S_ISDIR(st.st_mode)) {
		errno = ENOTDIR;
		return fail(&p, folder, "cannot hold the outputs");
	}
	enum status status = transfer_set(&p);
	if (status && is_made)
		rmdir(folder);
	return status;
}

/* The file a path leads to, through links, so that the link stays one. */
static const char *target_of(struct arena *arena, const char *path)
{
	char *real = realpath(path, NULL);
	const char *copy = real ? arena_strdup(arena, real) : path;
	free(real);
	return copy;
}

static const char *folder_of(struct arena *arena, const char *path)
{
	const char *slash = strrchr(path, '/');
	if (!slash)
		return ".";
	return slash == path ? "/" : arena_strndup(arena, path, (size_t)(slash - path));
}

enum status publish_files(const struct output_file *files, size_t count, struct diag_list *diags)
{
	struct publisher p = publisher_for(count, diags);
	for (size_t i = 0; i < count; i++) {
		struct transfer *t = &p.transfers[i];
		*t = (struct transfer){.bytes = files[i].bytes};
		if (!files[i].name)
			continue;
		t->path = target_of(p.arena, files[i].name);
		t->folder = folder_of(p.arena, t->path);
	}
	return transfer_set(&p);
}

enum status publish_stdout(struct bytes bytes, struct diag_list *diags)
{
	return publish_files(&(struct output_file){NULL, bytes}, 1, diags);
}
