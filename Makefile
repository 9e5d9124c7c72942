# A list of names. `make demo` and `make test` are the two to know; each sets itself up.
# From a fresh clone they need python3 (3.11 or newer) with venv, make and git.

PYTHON ?= python3
BIN := .venv/bin
PIP := $(BIN)/python -m pip install -qq --disable-pip-version-check
# Where compiled files are forbidden, every phase would make its tests anew.
export PYTHONDONTWRITEBYTECODE :=
# One thread for linear algebra in each process: more of them only wait for one another.
PYTEST := OPENBLAS_NUM_THREADS=1 $(BIN)/python -m pytest -q
# Two, like the smallest machine that runs the tests; `make test JOBS=8` on a larger one.
JOBS ?= 2
TOGETHER := $(MAKE) --no-print-directory --jobs=$(JOBS) --output-sync
SHEETS := build/wren-house
# Of these rooms no lines are counted.
SHELLS := cli exchange render serve solvers store

.PHONY: help demo test check style types layers audit bench beside covered long \
	app app-built app-jobs app-test app-bench lock sheets-accept pictures words format clean
.DELETE_ON_ERROR:

help:
	@echo 'demo           plan the example house and write its sheets to $(SHEETS)'
	@echo 'test           every check: style, types, layers, tests, docstring examples, benchmarks once'
	@echo 'check          the quick ones only: style, types, layers'
	@echo 'audit          ask what is known against the versions that the locks pin; needs the network'
	@echo 'bench          measure how long the fit and the nester take'
	@echo 'beside         run cutting-stock instances beside general-purpose libraries: about an hour'
	@echo 'covered        which lines of the core its unit tests reach, and the least share of them'
	@echo 'long           that, and property tests and heavy tests with their full counts'
	@echo 'sheets-accept  write the sheets of today as the approved ones; then read the diff'
	@echo 'app            build the app for the phone; `longpoint app` then serves it'
	@echo 'app-test       build the app, and do the jobs of a carpenter on it in Chromium, offline'
	@echo 'app-bench      measure the app: download, start, feedback, scenario A planned'
	@echo 'pictures       make the pictures of the README, and of every screen of the phone'
	@echo 'words          collect what is said, and bring every language up to date with it'
	@echo 'format         lay out the code and mend what can be mended by itself'
	@echo 'lock           pin what the project needs; FLAGS=--upgrade takes the newest'
	@echo 'clean          remove all that was made here, the environment too'

demo: .venv/installed
	@$(BIN)/longpoint plan examples/wren-house.toml --out $(SHEETS) || [ $$? -eq 1 ]
	@echo 'The sheets are in $(SHEETS): open sheets.pdf. One window is held: its readings are in doubt.'

test: .venv/tools
	@echo 'Style, types and layers; beside them the phone app is built ...'
	@$(TOGETHER) style types layers app-built
	@echo 'Tests, docstring examples, and benchmarks once, untimed ...'
	@$(PYTEST) -n $(JOBS) --dist worksteal --benchmark-disable -m 'not long and not browser'
	@$(MAKE) --no-print-directory app-jobs
	@echo 'What is known against the versions that the locks pin ...'
	@$(BIN)/python -m tests.audit --tell

check: .venv/tools
	@echo 'Style, types and layers ...'
	@$(TOGETHER) style types layers

style types layers: .venv/tools

style:
	@$(BIN)/ruff check --quiet
	@$(BIN)/ruff format --quiet --check

types:
	@$(BIN)/mypy --no-error-summary

layers:
	@$(BIN)/lint-imports --no-logo

# Fails on what is known against a pinned version; `make test` only tells it: see tests/audit.py.
audit: .venv/tools
	@$(BIN)/python -m tests.audit

bench: .venv/tools
	@$(PYTEST) tests/bench -m bench --benchmark-only

# `make beside INSTANCES=folder-of-the-public-set`; without it, by the published recipes.
INSTANCES ?= recipes
beside: .venv/tools
	@$(BIN)/python -m tests.bench.run_beside $(INSTANCES)

# Of the core's unit tests; counting lines takes half as long again as the tests.
covered: .venv/tools
	@$(PYTEST) -n $(JOBS) --benchmark-disable --cov --cov-report=term \
		$(SHELLS:%=--ignore=tests/unit/%) tests/unit src

long: covered
	@HYPOTHESIS_PROFILE=long $(PYTEST) -n $(JOBS) --benchmark-disable -m 'property or long'

sheets-accept: .venv/tools
	@GOLDEN_ACCEPT=1 $(PYTEST) tests/golden tests/docs
	@git status --short -- tests/golden/expected

pictures: .venv/installed app
	@$(BIN)/python docs/pictures/make.py
	@$(BIN)/python -m docs.pictures.phone

format: .venv/tools
	@$(BIN)/ruff check --quiet --fix-only
	@$(BIN)/ruff format

# The lock for the tools comes first; the small one for the demo takes its pins from it.
LOCK := build/lock/bin/uv pip compile --quiet --universal --python-version 3.11 \
	--fork-strategy fewest --no-strip-extras --generate-hashes --no-header --no-emit-index-url \
	--no-emit-find-links --no-annotate $(FLAGS) pyproject.toml
lock: build/lock/bin/uv
	@$(LOCK) --group dev --output-file requirements-dev.txt
	@$(LOCK) --group install --constraints requirements-dev.txt --output-file requirements-run.txt

# Node builds the app: the machine's own if it is new enough, else the one from PyPI.
app: .venv/installed
	@$(BIN)/python -m app.build

app-test: app-built app-jobs

# What can't be had here is named and left out; with CI=true that is a failure.
app-built: .venv/tools
	@$(BIN)/python -m app.build --or-leave

app-jobs: .venv/tools
	@sh app/get_chromium.sh
	@echo 'The phone app in Chromium, and the core on its Python ...'
	@$(PYTEST) -n $(JOBS) --dist loadscope -rs --benchmark-disable tests/browser \
		-m 'browser and not long'

app-bench: app
	@$(BIN)/python -m app.node node app/tests/bench.mjs

clean:
	@rm -rf .venv build dist app/node_modules app/public/core src/longpoint/serve/app .coverage .*_cache .hypothesis .benchmarks

build/lock/bin/uv:
	@$(PYTHON) -m venv build/lock
	@build/lock/bin/python -m pip install -qq --disable-pip-version-check uv

.venv/bin/python:
	@$(PYTHON) -c 'import sys; sys.version_info >= (3, 11) or sys.exit("longpoint needs Python 3.11 or newer.")'
	@$(PYTHON) -m venv .venv

.venv/run: requirements-run.txt | .venv/bin/python
	@echo 'Setting up: what longpoint needs to run ...'
	@$(PIP) --require-hashes -r $<
	@touch $@

.venv/installed: .venv/run pyproject.toml src/longpoint/__init__.py
	@$(PIP) --no-deps --no-build-isolation -e .
	@touch $@

# uv takes a fifth of pip's time, but knows nothing of pip's settings: a mirror, a proxy.
.venv/tools: requirements-dev.txt .venv/installed
	@echo 'Setting up: what its tests need ...'
	@sed -n '/^uv==/,/[^\\]$$/p' $< > .venv/uv.txt
	@$(PIP) --require-hashes -r .venv/uv.txt
	@$(BIN)/uv pip install --quiet --python $(BIN)/python --require-hashes -r $< || \
		$(PIP) --require-hashes -r $<
	@touch $@

words: .venv/tools
	@$(BIN)/python tools/words.py $(TONGUE)
