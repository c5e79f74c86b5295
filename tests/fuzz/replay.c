/* replay.c - feeds stored inputs to the fuzz program it is linked with. An input passes
 * when the program comes back from it. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* The bytes of a file in a block of just its size, so that a read past the end is seen. */
static uint8_t *read_file(const char *path, size_t *out_size)
{
	FILE *file = fopen(path, "rb");
	if (!file || fseek(file, 0, SEEK_END) != 0)
		return NULL;
	long size = ftell(file);
	rewind(file);
	uint8_t *data = size >= 0 ? malloc(size ? (size_t)size : 1) : NULL;
	if (data && fread(data, 1, (size_t)size, file) != (size_t)size) {
		free(data);
		data = NULL;
	}
	fclose(file);
	*out_size = (size_t)size;
	return data;
}

int main(int argc, char **argv)
{
	if (argc < 2)
		puts("not ok - no stored input");
	printf("1..%d\n", argc > 1 ? argc - 1 : 1);
	for (int i = 1; i < argc; i++) {
		size_t size = 0;
		uint8_t *data = read_file(argv[i], &size);
		fflush(stdout);
		if (data)
			LLVMFuzzerTestOneInput(data, size);
		printf("%s %d - %s\n", data ? "ok" : "not ok", i, argv[i]);
		free(data);
	}
	return argc < 2;
}
