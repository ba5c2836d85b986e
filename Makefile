# make pack    a measured design to a job pack, from a bare machine: look in outputs/
# make check   all checks and tests, from a bare machine
# make pairwise  the doors of every two choices together: solids, motion, whole packs read back
# make bench   timings, printed as ratios
# make pictures  the examples' pictures, made anew
# make gallery   every starter and example half open, on one sheet: docs/gallery.png
# make clean   what tools leave behind; packs and .venv stay

SHELL := bash
.PHONY: pack check pairwise bench pictures gallery clean

BIN := .venv/bin
EXAMPLES := $(wildcard examples/*/design.yaml)

pack:
	@bash .ci/setup pack
	$(BIN)/stilewright build examples/larch-hill-reading-room/design.yaml

# pytest comes last, so that its closing line is the last thing to be read.
check:
	@bash .ci/setup check
	$(BIN)/ruff format --check
	$(BIN)/ruff check
	$(BIN)/mypy
	$(BIN)/lint-imports
	@for design in $(EXAMPLES); do $(BIN)/stilewright build "$$design" || exit 1; done
	$(BIN)/pytest -n 2

pairwise:
	@bash .ci/setup check
	$(BIN)/pytest -n 2 -m kernel tests/pairwise

bench:
	@bash .ci/setup pack
	@for script in benchmarks/time_*.py; do $(BIN)/python "$$script" || exit 1; done

pictures:
	@bash .ci/setup check
	@for design in $(EXAMPLES); do \
		folder=$$(dirname "$$design"); pack=$$(mktemp -d)/pack; \
		$(BIN)/stilewright build "$$design" --pictures --out "$$pack" >/dev/null && \
		$(BIN)/python web/pictures.py "$$folder" "$$pack" || exit 1; \
	done

gallery:
	@bash .ci/setup pack
	$(BIN)/python web/gallery.py docs/gallery.png

clean:
	rm -rf build dist *.egg-info .mypy_cache .pytest_cache .ruff_cache .import_linter_cache .hypothesis
	find . -name __pycache__ -not -path './.venv/*' -prune -exec rm -rf {} +
