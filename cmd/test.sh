#!/usr/bin/env bash
# Every check of the project, in one command, from any folder:
#
#     cmd/test.sh
#
# Needs Go and a Debian machine; installs the outside tools below through apt
# if some are missing, as root or through sudo. Prints each command before it
# runs it and stops at the first that fails. A test that is skipped counts as
# failed: an outside check that cannot run proves nothing.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# What the tests call that Go does not bring, and why.
outside=(
	gcc                 # the race detector is linked by it
	libc6-dev           # ... against this
	ca-certificates     # Go fetches modules over https
	python3-ezdxf       # reads and audits DXF
	python3-openpyxl    # reads workbooks
	gdal-bin            # ogrinfo, a second DXF reader
	libdxflib-dev       # a third one, for files to cut from
	g++                 # ... compiles the program that asks it
	librsvg2-bin        # rsvg-convert draws SVG, to be measured in pixels
	libxml2-utils       # xmllint: SVG and other XML well formed
	poppler-utils       # reads text and pages back from PDF
	qpdf                # checks the structure of PDF
	chromium            # opens the pages and prints them
	fonts-routed-gothic # our lettering, for the programs that draw SVG
	occt-draw           # reads STEP and measures volumes
	gmsh                # a second STEP reader
	zbar-tools          # reads codes back from labels
	glpk-utils          # glpsol, proves board layouts
	coinor-cbc          # cbc, a second prover
)

# Pinned, and run without an entry in go.mod: its own dependencies are no
# business of the program.
staticcheck=honnef.co/go/tools/cmd/staticcheck@v0.8.2

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

say() { printf '\n== %s\n' "$*"; }
run() {
	printf '+ %s\n' "$*"
	"$@"
}
fail() {
	printf 'test.sh: %s\n' "$*" >&2
	exit 1
}

missing() {
	local package
	for package in "${outside[@]}"; do
		[[ $(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) == installed ]] || printf '%s\n' "$package"
	done
}

install_outside() {
	command -v dpkg-query >/dev/null || fail "this is no Debian machine: dpkg-query is missing"
	local wanted as_root=()
	mapfile -t wanted < <(missing)
	((${#wanted[@]})) || return 0
	if ((EUID != 0)); then
		command -v sudo >/dev/null || fail "to install ${wanted[*]}, run as root or have sudo"
		as_root=(sudo)
	fi
	run "${as_root[@]}" apt-get update -q
	run "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${wanted[@]}"
	mapfile -t wanted < <(missing)
	((${#wanted[@]} == 0)) || fail "apt did not install ${wanted[*]}"
}

check_format() {
	local unformatted
	printf '+ gofmt -l model render cmd golden\n'
	unformatted=$(gofmt -l model render cmd golden)
	[[ -z $unformatted ]] || fail "not formatted: $unformatted"
}

# run_tests runs go test with its arguments: it shows one line a package while
# they run, everything if one fails, and how many tests there were.
run_tests() {
	local log=$scratch/tests passed failed skipped
	printf '+ go test -count=1 -timeout 40m -v %s\n' "$*"
	if ! go test -count=1 -timeout 40m -v "$@" 2>&1 | tee "$log" | { grep --line-buffered -E '^(ok|FAIL|\?)[[:space:]]' || true; }; then
		grep -vE '^[[:space:]]*(=== |--- PASS)' "$log" || true
		fail "tests failed"
	fi
	passed=$(grep -cE '^[[:space:]]*--- PASS: ' "$log" || true)
	failed=$(grep -cE '^[[:space:]]*--- FAIL: ' "$log" || true)
	skipped=$(grep -cE '^[[:space:]]*--- SKIP: ' "$log" || true)
	printf '%d tests passed, %d failed, %d skipped\n' "$passed" "$failed" "$skipped"
	((passed > 0)) || fail "no test ran"
	if ((skipped > 0)); then
		grep -E '^[[:space:]]*--- SKIP: ' "$log"
		fail "$skipped tests were skipped; a check that cannot run must fail"
	fi
}

# check_repeats draws every sample three times: as it is, in another folder with
# another clock and language, and with a program for another kind of machine.
# All three must give the same bytes. One that hangs is stopped, and fails.
check_repeats() {
	local sample name
	run go build -o "$scratch/native/stilewright" ./cmd/stilewright
	run env GOARCH=386 go build -o "$scratch/other/stilewright" ./cmd/stilewright
	for sample in samples/*.yaml; do
		name=$(basename "$sample" .yaml)
		run timeout 120 "$scratch/native/stilewright" draw "$sample" -o "$scratch/a/$name"
		cp "$sample" "$scratch/native/model.yaml"
		(
			cd "$scratch/native"
			run env TZ=Asia/Kathmandu LC_ALL=tr_TR.UTF-8 HOME=/nonexistent timeout 120 ./stilewright draw model.yaml -o "../b/else where/$name"
		)
		run timeout 120 "$scratch/other/stilewright" draw "$sample" -o "$scratch/c/$name"
	done
	run diff -r "$scratch/a" "$scratch/b/else where"
	run diff -r "$scratch/a" "$scratch/c"
}

main() {
	[[ -x /usr/local/go/bin/go ]] && PATH=$PATH:/usr/local/go/bin
	command -v go >/dev/null || fail "Go is missing"
	say "outside tools"
	install_outside
	printf '%d packages at hand\n' "${#outside[@]}"
	say "text of the program"
	check_format
	run go vet ./...
	run go run "$staticcheck" ./...
	say "modules"
	run go mod tidy -diff
	run go mod verify
	say "other systems"
	run env GOOS=darwin GOARCH=arm64 go build ./...
	run env GOOS=windows GOARCH=amd64 go build ./...
	say "tests"
	run_tests ./...
	say "tests of what runs side by side, with the race detector"
	run_tests -race ./render/drawing ./render/packet
	run_tests -race -run '^TestDraw' ./cmd/...
	say "same bytes twice"
	check_repeats
	say "all passed in $((SECONDS / 60)) min $((SECONDS % 60)) s"
}

main "$@"
