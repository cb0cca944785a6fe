#!/bin/sh
# Times the board layout beside two outside solvers (CBC: coinor-cbc, GLPK:
# glpk-utils) in one run and prints a table of medians. The solvers get the same
# job with every pattern listed, or as a flow model where there are too many.
#
# usage: cmd/bench-cutting.sh [runs]     (default 5)
set -eu
cd "$(dirname "$0")/.."
for solver in cbc glpsol; do
	command -v "$solver" >/dev/null || { echo "bench-cutting: $solver is not installed" >&2; exit 1; }
done
out=$(mktemp)
trap 'rm -f "$out"' EXIT
go test -tags sidebyside ./model/cutting -v -count=1 -timeout 60m -run '^TestSideBySide$' -args -side-by-side "${1:-5}" >"$out" || { cat "$out"; exit 1; }
grep -v -e '^PASS$' -e '^=== ' -e '^--- ' "$out"
