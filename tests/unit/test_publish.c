#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cli/publish.h"
#include "support/program.h"

struct place {
	struct arena *arena;
	char folder[64];
	struct diag_list diags;
};

static int make_place(void **state)
{
	static struct place place;
	place.arena = arena_new();
	strcpy(place.folder, P_tmpdir "/test_publish.XXXXXX");
	place.diags = diag_list_in(place.arena, "test");
	*state = &place;
	return mkdtemp(place.folder) ? 0 : -1;
}

static int remove_place(void **state)
{
	struct place *place = *state;
	int gone = system(arena_printf(place->arena, "rm -rf '%s'", place->folder));
	arena_free(place->arena);
	return gone;
}

static struct bytes words(const char *text)
{
	return (struct bytes){text, strlen(text)};
}

static const char *path_in(const struct place *place, const char *name)
{
	return arena_printf(place->arena, "%s/%s", place->folder, name);
}

static void put(const struct place *place, const char *name, const char *text)
{
	FILE *file = fopen(path_in(place, name), "w");
	assert_non_null(file);
	fputs(text, file);
	assert_int_equal(fclose(file), 0);
}

static void assert_content(const struct place *place, const char *name, const char *expected)
{
	char text[256] = "";
	FILE *file = fopen(path_in(place, name), "r");
	assert_non_null(file);
	size_t length = fread(text, 1, sizeof text - 1, file);
	fclose(file);
	text[length] = '\0';
	assert_string_equal(text, expected);
}

static int entries(const char *folder)
{
	int count = 0;
	DIR *dir = opendir(folder);
	assert_non_null(dir);
	for (struct dirent *entry; (entry = readdir(dir));)
		count += strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0;
	closedir(dir);
	return count;
}

static void test_set_is_written(void **state)
{
	struct place *place = *state;
	const struct output_file files[] = {{"a.svg", words("new a")}, {"b.pdf", words("new b")}};
	put(place, "a.svg", "old a");
	assert_int_equal(publish_set(place->folder, files, 2, &place->diags), STATUS_OK);
	assert_content(place, "a.svg", "new a");
	assert_content(place, "b.pdf", "new b");
	assert_int_equal(entries(place->folder), 2);
	assert_int_equal(place->diags.diags.count, 0);
}

static mode_t mode_of(const struct place *place, const char *name)
{
	struct stat st;
	assert_int_equal(stat(path_in(place, name), &st), 0);
	return st.st_mode & 0777;
}

static void test_modes(void **state)
{
	struct place *place = *state;
	const struct output_file files[] = {{"old", words("x")}, {"new", words("y")}};
	put(place, "old", "");
	chmod(path_in(place, "old"), 0604);
	mode_t mask = umask(027);
	assert_int_equal(publish_set(place->folder, files, 2, &place->diags), STATUS_OK);
	umask(mask);
	assert_int_equal(mode_of(place, "old"), 0604);
	assert_int_equal(mode_of(place, "new"), 0640);
}

static void test_one_missing_folder_is_made(void **state)
{
	struct place *place = *state;
	const struct output_file file = {"a", words("x")};
	const char *made = path_in(place, "made");
	assert_int_equal(publish_set(made, &file, 1, &place->diags), STATUS_OK);
	assert_content(place, "made/a", "x");
	const char *deep = path_in(place, "not/there");
	assert_int_equal(publish_set(deep, &file, 1, &place->diags), STATUS_OUTPUT);
	assert_int_equal(place->diags.diags.count, 1);
	assert_int_equal(entries(place->folder), 1);
}

/* One target that cannot be replaced spoils the set: all older files stay. */
static void test_a_folder_in_the_way(void **state)
{
	struct place *place = *state;
	const struct output_file files[] = {{"a", words("new a")}, {"b", words("new b")}};
	put(place, "a", "old a");
	mkdir(path_in(place, "b"), 0777);
	assert_int_equal(publish_set(place->folder, files, 2, &place->diags), STATUS_OUTPUT);
	assert_content(place, "a", "old a");
	assert_int_equal(entries(place->folder), 2);
}

/* Runs in a child, so that limits and signals are its own; its exit code is the result. */
static int in_child(struct place *place, int (*run)(struct place *))
{
	pid_t child = fork();
	if (child == 0)
		_exit(run(place));
	int status = 0;
	assert_int_equal(waitpid(child, &status, 0), child);
	return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

static int publish_two(struct place *place)
{
	static const char big[100000] = "new b";
	const struct output_file files[] = {{"a", words("new a")}, {"b", {big, sizeof big}}};
	return (int)publish_set(place->folder, files, 2, &place->diags);
}

/* The last bytes do not fit. */
static int publish_limited(struct place *place)
{
	const struct rlimit limit = {99999, 99999};
	setrlimit(RLIMIT_FSIZE, &limit);
	return publish_two(place);
}

static void test_full_disk_leaves_old_files(void **state)
{
	struct place *place = *state;
	put(place, "a", "old a");
	put(place, "b", "old b");
	assert_int_equal(in_child(place, publish_limited), STATUS_OUTPUT);
	assert_content(place, "a", "old a");
	assert_content(place, "b", "old b");
	assert_int_equal(entries(place->folder), 2);
}

/* An end asked for before the renames: temporaries go, then the end comes. */
static int publish_interrupted(struct place *place)
{
	sigset_t held;
	sigemptyset(&held);
	sigaddset(&held, SIGTERM);
	sigprocmask(SIG_BLOCK, &held, NULL);
	raise(SIGTERM);
	int status = publish_two(place);
	if (status != STATUS_OUTPUT)
		return 100;
	sigprocmask(SIG_UNBLOCK, &held, NULL);
	return 101; /* not reached */
}

static void test_interrupt_leaves_no_temporary(void **state)
{
	struct place *place = *state;
	put(place, "a", "old a");
	assert_int_equal(in_child(place, publish_interrupted), 128 + SIGTERM);
	assert_content(place, "a", "old a");
	assert_int_equal(entries(place->folder), 1);
}

static enum status publish_one(const char *path, struct bytes bytes, struct diag_list *diags)
{
	const struct output_file file = {path, bytes};
	return publish_files(&file, 1, diags);
}

/* Two paths in two folders are one set: neither changes when the other cannot be written. */
static void test_files_of_two_folders(void **state)
{
	struct place *place = *state;
	mkdir(path_in(place, "one"), 0777);
	mkdir(path_in(place, "two"), 0777);
	put(place, "one/a", "old a");
	struct output_file files[] = {{path_in(place, "one/a"), words("new a")},
	                              {path_in(place, "two/b"), words("new b")}};
	assert_int_equal(publish_files(files, 2, &place->diags), STATUS_OK);
	assert_content(place, "one/a", "new a");
	assert_content(place, "two/b", "new b");

	const char *unwritable[] = {"/dev/full", path_in(place, "no/b"), path_in(place, "two")};
	for (size_t i = 0; i < sizeof unwritable / sizeof *unwritable; i++) {
		files[0].bytes = words("newer a");
		files[1].name = unwritable[i];
		assert_int_equal(publish_files(files, 2, &place->diags), STATUS_OUTPUT);
		assert_content(place, "one/a", "new a");
		assert_int_equal(entries(path_in(place, "one")), 1);
		assert_int_equal(entries(path_in(place, "two")), 1);
	}
}

static void test_single_file_through_a_link(void **state)
{
	struct place *place = *state;
	put(place, "real", "old");
	assert_int_equal(symlink("real", path_in(place, "link")), 0);
	assert_int_equal(publish_one(path_in(place, "link"), words("new"), &place->diags),
	                 STATUS_OK);
	assert_content(place, "real", "new");
	struct stat st;
	assert_int_equal(lstat(path_in(place, "link"), &st), 0);
	assert_true(S_ISLNK(st.st_mode));
	assert_int_equal(publish_one(path_in(place, "no/file"), words("new"), &place->diags),
	                 STATUS_OUTPUT);
}

static void test_devices_are_written_directly(void **state)
{
	struct place *place = *state;
	assert_int_equal(publish_one("/dev/null", words("x"), &place->diags), STATUS_OK);
	assert_int_equal(place->diags.diags.count, 0);
	assert_int_equal(publish_one("/dev/full", words("x"), &place->diags), STATUS_OUTPUT);
	assert_non_null(strstr(place->diags.diags.items[0].text, "No space left"));
	struct stat st;
	assert_true(stat("/dev/null", &st) == 0 && S_ISCHR(st.st_mode));
}

static int stdout_full(struct place *place)
{
	int fd = open("/dev/full", O_WRONLY);
	dup2(fd, STDOUT_FILENO);
	return (int)publish_stdout(words("text"), &place->diags);
}

static int stdout_closed(struct place *place)
{
	close(STDOUT_FILENO);
	return (int)publish_stdout(words("text"), &place->diags);
}

static int stdout_broken_pipe(struct place *place)
{
	int ends[2];
	if (pipe(ends) != 0)
		return 100;
	close(ends[0]);
	dup2(ends[1], STDOUT_FILENO);
	return (int)publish_stdout(words("text"), &place->diags);
}

static int stdout_file(struct place *place)
{
	int fd = open(path_in(place, "out"), O_WRONLY | O_CREAT, 0666);
	dup2(fd, STDOUT_FILENO);
	return (int)publish_stdout(words("text"), &place->diags);
}

static void test_standard_output(void **state)
{
	struct place *place = *state;
	fflush(stdout);
	assert_int_equal(in_child(place, stdout_full), STATUS_OUTPUT);
	assert_int_equal(in_child(place, stdout_closed), STATUS_OUTPUT);
	assert_int_equal(in_child(place, stdout_broken_pipe), STATUS_OUTPUT);
	assert_int_equal(in_child(place, stdout_file), STATUS_OK);
	assert_content(place, "out", "text");
}

#define test_in_place(test) cmocka_unit_test_setup_teardown(test, make_place, remove_place)

int main(void)
{
	const struct CMUnitTest tests[] = {
		test_in_place(test_set_is_written),
		test_in_place(test_modes),
		test_in_place(test_one_missing_folder_is_made),
		test_in_place(test_a_folder_in_the_way),
		test_in_place(test_full_disk_leaves_old_files),
		test_in_place(test_interrupt_leaves_no_temporary),
		test_in_place(test_files_of_two_folders),
		test_in_place(test_single_file_through_a_link),
		test_in_place(test_devices_are_written_directly),
		test_in_place(test_standard_output),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
