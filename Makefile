# Two commands do everything on a fresh machine with Go, Node and make:
#   make run    builds and starts the app on the example, prints its address
#   make test   runs all tests
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help

BIN := bin/pourwright
EXAMPLE ?= examples/estuary-bench/piece.yaml
ADDRESS ?= 127.0.0.1:8470
# Outside data for the published checks; tests that need it skip, saying so, where it is absent.
ifneq ($(wildcard ../shared/checks),)
export POURWRIGHT_CHECKS ?= $(abspath ../shared/checks)
endif
WEB_SOURCES := $(shell find web/src web/index.html web/package.json web/vite.config.ts 2>/dev/null)
FUZZTIME ?= 60s

.PHONY: help run build test check bench golden fuzz checks chromium clean

help: ## list the targets
	@grep -hE '^[a-z]+:.*## ' $(MAKEFILE_LIST) | sed -E 's/:.*## /\t/' | expand -t 12

run: build ## build, start the app on the example, print its address
	$(BIN) serve $(EXAMPLE) --address $(ADDRESS)

build: web/dist/index.html ## build the one binary with the web page inside
	go build -o $(BIN) ./cmd/pourwright

web/node_modules/.package-lock.json: web/package.json web/package-lock.json
	cd web && npm ci --no-progress
	@touch $@

web/dist/index.html: web/node_modules/.package-lock.json $(WEB_SOURCES)
	cd web && npm run build
	@touch $@

chromium: # Debian's Chromium for the page tests: installed when root, else the page tests say SKIPPED
	@if ! command -v chromium >/dev/null && [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
		apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends chromium poppler-utils; fi

test: build chromium ## all tests: Go, page units, pages in a browser
	go test ./...
	cd web && npm test
	@if command -v chromium >/dev/null; then cd web && npm run e2e; \
	else echo "SKIPPED: page tests in a browser (chromium absent; install Debian's chromium)"; fi

check: web/node_modules/.package-lock.json ## formatting, vet, linters, generated pages up to date
	@out=$$(gofmt -l cmd internal examples web/*.go); [ -z "$$out" ] || { echo "gofmt would change: $$out"; exit 1; }
	go vet ./...
	go tool -modfile=tools/go.mod staticcheck ./...
	cd web && npm run typecheck && npm run lint

checks: ## run every published check and write docs/checks.md
	@rm -f bin/checks.jsonl; mkdir -p bin
	POURWRIGHT_CHECK_LOG=$(abspath bin/checks.jsonl) go test -count=1 -run 'Published' ./... > bin/checks.log || { cat bin/checks.log; exit 1; }
	go run ./cmd/pourbench checks bin/checks.jsonl > docs/checks.md
	@tail -n 3 docs/checks.md

bench: ## speed, as ratios within one run
	go test -run '^$$' -bench . -benchtime 3x ./internal/...

golden: ## rewrite the golden plans of the examples; read the difference before committing
	go test ./internal/cli -run Golden -update

fuzz: ## every file reader and the geometry, FUZZTIME each
	@for pkg in $$(go list ./internal/...); do \
		for f in $$(go test -list '^Fuzz' $$pkg | grep '^Fuzz' || true); do \
			echo "$$pkg $$f"; go test -run '^$$' -fuzz "^$$f\$$" -fuzztime $(FUZZTIME) $$pkg; done; done

clean: ## remove what was built
	rm -rf bin web/dist
