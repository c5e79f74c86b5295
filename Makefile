# Makefile - builds build/jurystick and everything that proves it. `make help` lists the targets.
# Variants live in $(BUILD)/<variant>/. CFLAGS, CXXFLAGS and LDFLAGS are the caller's.

BUILD  ?= build
PREFIX ?= /usr/local
CFLAGS ?= -O2 -g
CXXFLAGS ?= -O2 -g
CLANG_FORMAT ?= clang-format
ifeq ($(origin CC),default)
CC := gcc
endif

# ---- how a run is set up -------------------------------------------------------------

.DEFAULT_GOAL := all
.DELETE_ON_ERROR:
.SUFFIXES:
.SECONDARY:
MAKEFLAGS += --no-builtin-rules --no-print-directory
export LC_ALL := C

GOALS      := $(or $(MAKECMDGOALS),all)
BARE_GOALS := clean help format format-check uninstall
TEST_GOALS := test test-long check sanitize test-programs lint golden-update fuzz-replay bench \
	check-browser \
	$(BUILD)/tests/%

CORES := $(shell nproc 2>/dev/null || echo 1)
ifeq ($(MAKELEVEL)$(filter -j%,$(MAKEFLAGS)),0)
MAKEFLAGS += -j$(CORES)
endif

Q := $(if $(filter 1,$(V)),,@)
say = $(if $(filter 1,$(V)),:,printf '  %-7s %s\n' $(1) $(2))

# Packages are looked at, and flags asked for, once: make builds this file first and then
# starts over with it. It is made again when the list of packages changes.
ifneq ($(filter-out $(BARE_GOALS),$(GOALS)),)
PACKAGE_SETS := build $(if $(filter $(TEST_GOALS),$(GOALS)),test)
FLAGS := $(BUILD)/flags-$(lastword $(PACKAGE_SETS)).mk
include $(FLAGS)
$(FLAGS): .ci/packages .ci/flags
	@.ci/packages $(PACKAGE_SETS)
	@mkdir -p $(@D)
	@.ci/flags $(PACKAGE_SETS) >$@
endif

# ---- sources -------------------------------------------------------------------------

MAIN    := src/cli/main.c
LAYERS  ?= $(sort $(notdir $(wildcard src/*)))
SOURCES := $(filter-out $(MAIN),$(sort $(wildcard $(LAYERS:%=src/%/*.c))))
STYLES  := $(sort $(wildcard styles/*.style))
DATA    := $(sort $(wildcard src/words/*.words src/rules/*.rules)) $(STYLES) \
	$(sort $(wildcard src/screen/*.css src/screen/*.js))
PLANS   := $(sort $(wildcard demo-plans/*.xml))

BIN     := $(BUILD)/jurystick
LIB     := $(BUILD)/libjurystick.a
OBJECTS := $(SOURCES:%.c=$(BUILD)/%.o) $(BUILD)/embedded_data.o $(BUILD)/embedded_table.o

WARNINGS := -Wall -Wextra -Wshadow -Wdouble-promotion -Wvla -Wconversion \
	$(if $(WERROR),-Werror)
C_WARNINGS := $(WARNINGS) -Wstrict-prototypes -Wmissing-prototypes
# One rounding everywhere: no fused operations, no flags of this machine's processor.
LANGUAGE := -D_XOPEN_SOURCE=700 -ffp-contract=off
SANITIZE_FLAGS := $(if $(SANITIZE),-fsanitize=address -fsanitize=undefined -fno-sanitize-recover=all \
	-fno-omit-frame-pointer)
COMPILE_C = $(CC) -std=c11 $(LANGUAGE) -Isrc $(PKG_CFLAGS) $(C_WARNINGS) $(CFLAGS) \
	$(SANITIZE_FLAGS)
COMPILE_CXX = $(CXX) -std=c++17 $(LANGUAGE) -Isrc -Itests $(PKG_CFLAGS) -Wall -Wextra \
	$(CXXFLAGS) $(SANITIZE_FLAGS)
LIBS = $(PKG_LIBS) -lm

# ---- program -------------------------------------------------------------------------

.PHONY: all
all: $(if $(filter cli,$(LAYERS)),$(BIN),$(LIB))

$(BIN): $(BUILD)/$(MAIN:.c=.o) $(LIB)
	@$(call say,LINK,$@)
	$(Q)$(CC) $(SANITIZE_FLAGS) $(CFLAGS) $(LDFLAGS) $^ $(LIBS) -o $@

# `remember,TEXT`: the recipe of a file that holds TEXT and is touched only when it changes.
remember = @mkdir -p $(@D); printf '%s\n' '$(1)' | cmp -s - $@ || printf '%s\n' '$(1)' >$@
.PHONY: always
$(BUILD)/sources.list: always
	$(call remember,$(OBJECTS) $(SUPPORT_OBJ) $(ORACLE_OBJ) $(RANDOM_OBJ))
$(BUILD)/data.list: always
	$(call remember,$(DATA) $(FONT_REGULAR) $(FONT_BOLD))
$(BUILD)/compile.list: always
	$(call remember,$(COMPILE_C) $(COMPILE_CXX) $(LDFLAGS))

$(LIB): $(OBJECTS) $(BUILD)/sources.list
	@$(call say,AR,$@)
	$(Q)rm -f $@ && ar qcs $@ $(OBJECTS)

$(BUILD)/src/%.o: src/%.c $(BUILD)/compile.list
	@mkdir -p $(@D); $(call say,CC,$<)
	$(Q)$(COMPILE_C) -MMD -MP -c $< -o $@

# Words, rules, styles and the font travel in the program as read-only bytes.
$(BUILD)/embedded_data.S: .ci/embed $(BUILD)/data.list
	$(Q).ci/embed data $(DATA) font/regular.ttf=$(FONT_REGULAR) font/bold.ttf=$(FONT_BOLD) >$@
$(BUILD)/embedded_table.c: .ci/embed $(BUILD)/data.list $(DATA) $(FONT_REGULAR) $(FONT_BOLD)
	$(Q).ci/embed table $(DATA) font/regular.ttf=$(FONT_REGULAR) font/bold.ttf=$(FONT_BOLD) >$@
$(BUILD)/embedded_data.o: $(BUILD)/embedded_data.S $(DATA) $(FONT_REGULAR) $(FONT_BOLD)
	@$(call say,EMBED,$@)
	$(Q)$(CC) -c $< -o $@
$(BUILD)/embedded_table.o: $(BUILD)/embedded_table.c $(BUILD)/compile.list
	$(Q)$(COMPILE_C) -MMD -MP -c $< -o $@

# ---- demo ----------------------------------------------------------------------------

# The specimen of the drawing language: every line, area and mark, in each style.
SPECIMEN_OBJ := $(addprefix $(BUILD)/,tests/specimen/specimen.o tests/specimen/main.o)
SPECIMEN     := $(BUILD)/tests/specimen/draw_specimen
$(SPECIMEN): $(SPECIMEN_OBJ) $(LIB)
	@$(call say,LINK,$@)
	$(Q)$(CC) $(SANITIZE_FLAGS) $(CFLAGS) $(LDFLAGS) $^ $(LIBS) -o $@

.PHONY: demo
demo: $(BIN) $(SPECIMEN)
	@$(if $(PLANS),,echo 'demo: no plan in demo-plans/' >&2; exit 1)
	$(Q)for plan in $(PLANS); do \
		tests/support/demo.sh $(BIN) $$plan $(BUILD)/demo || exit 1; \
	done
	$(Q)mkdir -p $(BUILD)/demo/drawing-language; for style in $(notdir $(STYLES:.style=)); do \
		$(SPECIMEN) $$style $(BUILD)/demo/drawing-language || exit 1; \
	done; echo 'drawing language: $(BUILD)/demo/drawing-language/'

# ---- tests ---------------------------------------------------------------------------

SUPPORT      := $(BUILD)/tests/libsupport.a
SUPPORT_C    := $(sort $(wildcard tests/support/*.c tests/support/*.cpp)) tests/specimen/specimen.c
SUPPORT_OBJ  := $(addprefix $(BUILD)/,$(addsuffix .o,$(basename $(SUPPORT_C))))
programs_of   = $(addprefix $(BUILD)/,$(basename $(sort $(wildcard $(1)))))
UNIT         := $(call programs_of,tests/unit/test_*.c tests/unit/test_*.cpp)
PROPERTY     := $(call programs_of,tests/property/prop_*.c tests/property/prop_*.cpp)
FUZZ         := $(call programs_of,tests/fuzz/fuzz_*.c)
BENCH        := $(call programs_of,tests/bench/bench_*.c)
# The independent checker of records: one program of all its files, without our library.
ORACLE_OBJ   := $(addsuffix .o,$(call programs_of,tests/oracle/*.cpp))
ORACLE       := $(if $(ORACLE_OBJ),$(BUILD)/tests/oracle/recount)
# Random floors: one program that draws the floor of a seed, without our library too.
RANDOM_OBJ   := $(addsuffix .o,$(call programs_of,tests/random/*.c))
RANDOM_FLOOR := $(if $(RANDOM_OBJ),$(BUILD)/tests/random/floor)
SCRIPTS      := $(sort $(wildcard tests/cli/*.sh tests/golden/*.sh tests/fault/*.sh \
	tests/oracle/*.sh tests/random/*.sh))
RUN           = BUILD=$(BUILD) JURYSTICK=$(BIN) ORACLE=$(ORACLE) CC='$(CC)' PKG_CFLAGS='$(PKG_CFLAGS)' \
	RANDOM_FLOOR=$(RANDOM_FLOOR) SANITIZE='$(SANITIZE)' tests/run
LINT         := tests/lint/lint.sh tests/lint/selftest.sh tests/lint/runner.sh
# ONLY=TEXT: the programs with TEXT in their name.
TESTS         = $(LINT) $(UNIT) $(PROPERTY) $(FUZZ) $(SCRIPTS)
CHOSEN        = $(if $(ONLY),$(foreach t,$(TESTS),$(if $(findstring $(ONLY),$(t)),$(t))),$(TESTS))

.PHONY: test test-long test-programs lint golden-update fuzz-replay bench check-browser
test-programs: all $(filter $(BUILD)/%,$(CHOSEN)) $(ORACLE) $(RANDOM_FLOOR) $(SPECIMEN)

test: test-programs
	$(Q)$(RUN) $(CHOSEN)

test-long: export JURYSTICK_LONG := 1
test-long: test-programs
	$(Q)$(RUN) $(CHOSEN)

lint:
	$(Q)$(RUN) $(LINT)

fuzz-replay: $(FUZZ)
	$(Q)$(RUN) $(FUZZ)

golden-update: $(BIN)
	$(Q)GOLDEN_UPDATE=1 $(RUN) $(filter tests/golden/%,$(SCRIPTS))

# What only a browser can tell; no part of `make test`.
check-browser: $(BIN)
	$(Q).ci/packages browser
	$(Q)$(RUN) $(sort $(wildcard tests/browser/*.sh))

bench: $(BENCH) all
	@$(if $(BENCH),,echo 'bench: no program in tests/bench/ yet')
	$(Q)for program in $(BENCH); do JURYSTICK=$(BIN) $$program || exit 1; done

$(BUILD)/tests/%.o: tests/%.c $(BUILD)/compile.list
	@mkdir -p $(@D); $(call say,CC,$<)
	$(Q)$(COMPILE_C) -Itests $(TEST_CFLAGS) -MMD -MP -c $< -o $@
$(BUILD)/tests/%.o: tests/%.cpp $(BUILD)/compile.list
	@mkdir -p $(@D); $(call say,CXX,$<)
	$(Q)$(COMPILE_CXX) $(TEST_CFLAGS) -MMD -MP -c $< -o $@
$(SUPPORT): $(SUPPORT_OBJ) $(BUILD)/sources.list
	@mkdir -p $(@D)
	$(Q)rm -f $@ && ar qcs $@ $(SUPPORT_OBJ)

LINK_TEST = $(CC) $(SANITIZE_FLAGS) $(CFLAGS) $(LDFLAGS) $^ $(TEST_LIBS) $(LIBS) -lstdc++ -o $@
$(UNIT) $(PROPERTY) $(BENCH): %: %.o $(SUPPORT) $(LIB)
	@$(call say,LINK,$@)
	$(Q)$(LINK_TEST)
$(BUILD)/tests/oracle/recount: $(ORACLE_OBJ) $(BUILD)/sources.list
	@$(call say,LINK,$@)
	$(Q)$(CXX) $(SANITIZE_FLAGS) $(CXXFLAGS) $(LDFLAGS) $(ORACLE_OBJ) $(LIBS) -o $@
$(BUILD)/tests/random/floor: $(RANDOM_OBJ) $(BUILD)/sources.list
	@$(call say,LINK,$@)
	$(Q)$(CC) $(SANITIZE_FLAGS) $(CFLAGS) $(LDFLAGS) $(RANDOM_OBJ) -lm -o $@
# A fuzz program is one LLVMFuzzerTestOneInput; here it reads the stored inputs again.
$(FUZZ): %: %.o $(BUILD)/tests/fuzz/replay.o $(SUPPORT) $(LIB)
	@$(call say,LINK,$@)
	$(Q)$(LINK_TEST)

# ---- variants ------------------------------------------------------------------------

.PHONY: sanitize check
SANITIZER_ENV := ASAN_OPTIONS=exitcode=86:detect_leaks=1:strict_string_checks=1 \
	UBSAN_OPTIONS=exitcode=86:print_stacktrace=1 \
	LSAN_OPTIONS=suppressions=$(CURDIR)/tests/support/lsan.supp:print_suppressions=0
sanitize:
	$(Q)$(SANITIZER_ENV) $(MAKE) BUILD=$(BUILD)/sanitize SANITIZE=1 CFLAGS='-O1 -g' \
		CXXFLAGS='-O1 -g' test

check: format-check
	$(Q)$(MAKE) BUILD=$(BUILD)/check WERROR=1 test

# ---- house ---------------------------------------------------------------------------

FORMATTED = $(wildcard src/*/*.[ch] tests/*/*.[ch])

.PHONY: install uninstall format format-check clean help
install: $(BIN)
	install -D -m 755 $(BIN) $(DESTDIR)$(PREFIX)/bin/jurystick
uninstall:
	rm -f $(DESTDIR)$(PREFIX)/bin/jurystick

format:
	$(Q)$(CLANG_FORMAT) -i $(FORMATTED)
format-check:
	$(Q)if command -v $(CLANG_FORMAT) >/dev/null; then \
		$(CLANG_FORMAT) --dry-run --Werror $(FORMATTED); \
	else \
		echo 'format-check: $(CLANG_FORMAT) is not here, formatting was not looked at'; \
	fi

clean:
	rm -rf $(BUILD)

define HELP
make              the program: $(BIN)
make demo         draw every plan of demo-plans/ into $(BUILD)/demo/
make test         lint, unit, property, command, golden, fault and fuzz tests, demos
make test-long    the same with the long searches
make check        the format, then build with warnings as errors and test
make sanitize     build with address, leak and undefined checks, and test
make check-browser  the page for the screen and the pictures, in a browser without a window
make bench        measure (tests/bench/)
make lint         the house rules alone
make fuzz-replay  the stored fuzz inputs alone
make golden-update  accept what the golden tests see now
make format       lay the code out with $(CLANG_FORMAT)
make install      into DESTDIR/PREFIX (PREFIX=$(PREFIX)); uninstall takes it away
make clean        remove $(BUILD)/

BUILD=dir another build folder   V=1 show commands   CFLAGS, CXXFLAGS, LDFLAGS yours
PACKAGES=list never install a missing package, only name it
ONLY=text     make test: only the programs with this text in their name
LAYERS="..."  build only these folders of src/ (while another is half done)
endef
help:
	$(info $(HELP))@:

-include $(patsubst %.o,%.d,$(OBJECTS) $(BUILD)/$(MAIN:.c=.o) $(SUPPORT_OBJ) $(SPECIMEN_OBJ) \
	$(addsuffix .o,$(UNIT) $(PROPERTY) $(FUZZ) $(BENCH))) $(ORACLE_OBJ:.o=.d) $(RANDOM_OBJ:.o=.d)
