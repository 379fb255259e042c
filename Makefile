# make setup    everything needed to run the program
# make demo     the example in shop R, planned and packed into build/demo
# make test     format, lint, types, tests, browser tests: what CI runs
# make check    the same without the browser
# make measure  times and sizes, a table and build/measure.json
# make serve    the page in the browser
.PHONY: setup setup-tests demo test check measure serve lint
.DEFAULT_GOAL := demo

PY := .venv/bin/python
DEMO := build/demo

setup:
	@tools/setup.sh

setup-tests:
	@tools/setup.sh tests

demo: setup
	@mkdir -p build
	@.venv/bin/tommybar pack examples/demonstrator/design.yaml --shop examples/shops/shop-r.yaml --out $(DEMO)
	@echo "The pack lies in $(CURDIR)/$(DEMO)"

lint:
	$(PY) -m ruff format --check src tests tools
	$(PY) -m ruff check src tests tools
	$(PY) -m mypy

test: setup-tests lint
	$(PY) -m pytest -q -n 2 -m "not browser"
	$(PY) -m pytest -q -m browser

check: setup lint
	$(PY) -m pytest -q -n 2 -m "not browser"

measure: setup
	@$(PY) tools/measure.py

serve: setup
	@.venv/bin/tommybar serve
