# A fresh machine needs Python 3.11 and make; the rest is fetched, checked against its hash and kept in .venv.
PYTHON ?= $(shell command -v python3.11 || command -v python3)
PORT ?= 8000
# How long `make fuzz` looks for an input that breaks a reader, in seconds.
FUZZ_SECONDS ?= 60
# `make lock UPGRADE=--upgrade` moves every pin; without it only what pyproject.toml asks for changes.
UPGRADE ?=
# `make mutants MUTANTS="--room checks --sample 40 --seed 2"` breaks other places than the usual ones.
MUTANTS ?=

# Compiled once and kept, whatever this machine's environment says: the tests start the service some hundred times.
export PYTHONDONTWRITEBYTECODE =

PY := .venv/bin/python
PIP := $(PY) -m pip install --quiet --disable-pip-version-check --require-hashes
# --no-config and --no-header keep this machine's own settings and paths out of the lock files.
COMPILE := $(PY) -m uv pip compile --quiet --no-config --universal --python-version 3.11 --generate-hashes \
	--no-header $(UPGRADE)

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help demo serve dev test pytest explore mutants lint openapi dist bench lock audit sbom fuzz clean

help: ## show this list
	@grep -hE '^[a-z]+:.*## ' $(MAKEFILE_LIST) | awk -F ':.*## ' '{printf "  make %-9s %s\n", $$1, $$2}'

demo: .venv/runtime.stamp ## start the service, post every demo request, show the answers, stop
	$(PY) demo_requests/run.py

serve: .venv/runtime.stamp ## run the service on PORT (default 8000)
	$(PY) -m service serve --port $(PORT)

dev: .venv/dev.stamp ## install everything that contributors and the sweep need

# What leaves a core idle goes side by side: the two kinds of packages, and the types beside the tests.
test: need-chromium need-curl need-haproxy need-javac ## everything that must hold before a change goes in
	$(MAKE) --jobs=2 .venv/dev.stamp build/clients/.stamp
	$(PY) -m service openapi --check
	$(MAKE) --jobs=2 lint pytest

pytest: .venv/dev.stamp ## the tests alone
	$(PY) -m pytest -n 3 --dist loadfile --no-loadscope-reorder

explore: .venv/dev.stamp ## try the laws on many more and ever new cases; takes an hour or so
	$(PY) -m pytest -n 2 --hypothesis-profile=explore tests/property tests/unit/sweep tests/unit/assessment

mutants: .venv/dev.stamp ## break a sample of lines and values, list what no test notices; minutes a room
	$(PY) -m tests.mutants $(MUTANTS)

lint: .venv/dev.stamp ## style, types and import direction
	$(PY) -m ruff check .
	$(PY) -m ruff format --check .
	$(PY) -m mypy --strict service
	.venv/bin/lint-imports --no-cache

openapi: .venv/runtime.stamp ## write openapi/openapi.json
	$(PY) -m service openapi

dist: .venv/dev.stamp ## build the wheel and the source archive into dist
	rm -rf dist
	$(PY) -m hatchling build -d dist

bench: .venv/dev.stamp need-wrk ## measure, and write the table to the terminal
	$(PY) -m benchmarks

lock: .venv/dev.stamp need-npm ## resolve pyproject.toml and package.json into the lock files
	$(COMPILE) --all-extras --group dev pyproject.toml -o requirements-dev.lock
	$(COMPILE) -c requirements-dev.lock --no-annotate pyproject.toml -o requirements.lock
	$(COMPILE) --no-annotate --group fuzz -o requirements-fuzz.lock
	npm install --prefix tests/contract/clients --package-lock-only --omit-lockfile-registry-resolved --ignore-scripts

# --strict: a package that could not be looked up is a failure, not a pass.
audit: .venv/dev.stamp ## look for known weaknesses in what the service runs on
	.venv/bin/pip-audit --strict --disable-pip --require-hashes -r requirements.lock

# From a venv of its own: the list then holds licences and who needs whom, and nothing that only developers use.
sbom: .venv/dev.stamp ## write sbom.json, the CycloneDX list of what the service runs on
	rm -rf build/runtime
	$(PYTHON) -m venv --without-pip build/runtime
	$(PY) -m pip --python build/runtime/bin/python install --quiet --require-hashes -r requirements.lock
	.venv/bin/cyclonedx-py environment --pyproject pyproject.toml --mc-type application --output-reproducible \
	  -o sbom.json build/runtime/bin/python

fuzz: .venv/fuzz.stamp ## feed the designation readers generated text for FUZZ_SECONDS
	mkdir -p build/fuzz
	$(PY) -m fuzz.read_designations build/fuzz -max_total_time=$(FUZZ_SECONDS) -max_len=128

clean: ## remove everything that can be made again
	rm -rf .venv .mypy_cache .ruff_cache .pytest_cache .import_linter_cache .hypothesis .schemathesis build dist sbom.json
	find . -name __pycache__ -type d -prune -exec rm -rf {} +

$(PY):
	$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Python 3.11 or newer is needed: make PYTHON=...")'
	$(PYTHON) -m venv .venv

# Stamps stand for "these packages are in .venv"; the development lock contains the runtime lock, version by version.
.venv/runtime.stamp: requirements.lock | $(PY)
	$(PIP) -r requirements.lock
	touch $@

.venv/dev.stamp: requirements-dev.lock requirements.lock | $(PY)
	$(PIP) -r requirements-dev.lock
	touch .venv/runtime.stamp $@

.venv/fuzz.stamp: requirements-fuzz.lock .venv/runtime.stamp
	$(PIP) -r requirements-fuzz.lock
	touch $@

# --ignore-scripts: nothing that is fetched runs before a test asks it to.
build/clients/.stamp: $(addprefix tests/contract/clients/package,.json -lock.json) | need-node need-npm
	mkdir -p $(@D)
	cp $^ $(@D)
	npm ci --prefix $(@D) --ignore-scripts --no-audit --no-fund --silent
	touch $@

# need-COMMAND installs the Debian package that brings COMMAND, where the command is missing.
need-chromium: PACKAGES = chromium fonts-dejavu-core fonts-liberation
need-javac: PACKAGES = default-jdk-headless
need-node: PACKAGES = nodejs
need-%:
	@PATH="$$PATH:/usr/sbin"; command -v $* >/dev/null || { \
	  command -v apt-get >/dev/null || { echo "'$*' is needed; install it and try again" >&2; exit 1; }; \
	  [ "$$(id -u)" = 0 ] && sudo= || sudo=sudo; \
	  $$sudo apt-get update -qq && DEBIAN_FRONTEND=noninteractive \
	  $$sudo apt-get install -y -qq --no-install-recommends $(or $(PACKAGES),$*) >/dev/null; }
