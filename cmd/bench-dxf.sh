#!/bin/sh
# Times this program's DXF writer and ezdxf (Debian: python3-ezdxf) setting down
# the same 10,000 entities (LINE, ARC, TEXT in turn) in memory, side by side: the
# two take turns, and the table gives the median of the repetitions.
#
#   cmd/bench-dxf.sh [repetitions]      default 9
#
# ezdxf is timed twice: writing a document that stands ready, and building it
# too, which is what our Write does from a sheet.
set -eu
cd "$(dirname "$0")/.."
repetitions=${1:-9}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

go test -c -o "$scratch/dxf.test" ./render/dxf

cat > "$scratch/other.py" <<'EOF'
import io
import time

import ezdxf

start = time.perf_counter()
doc = ezdxf.new("R2000")
model = doc.modelspace()
for layer in ("OUTLINE", "NOTE"):
    doc.layers.add(layer)
for i in range(10_000):
    x, y = i % 100 * 31.75, i // 100 * 31.75
    if i % 3 == 0:
        model.add_line((x, y), (x + 20, y + 10), dxfattribs={"layer": "OUTLINE", "lineweight": 50})
    elif i % 3 == 1:
        model.add_arc((x, y), 10, 0, 90, dxfattribs={"layer": "OUTLINE", "lineweight": 25})
    else:
        model.add_text(f"{i} 5/8", dxfattribs={"layer": "NOTE", "height": 20, "insert": (x, y)})
built = time.perf_counter()
out = io.StringIO()
doc.write(out)
done = time.perf_counter()
print((done - built) * 1e3, (done - start) * 1e3)
EOF

: > "$scratch/ours"
: > "$scratch/theirs"
i=0
while [ "$i" -lt "$repetitions" ]; do
	"$scratch/dxf.test" -test.run '^$' -test.bench '^BenchmarkWrite10000$' -test.benchtime 20x |
		awk '/^BenchmarkWrite10000/ { print $3 / 1e6; n++ } END { exit n != 1 }' >> "$scratch/ours"
	/usr/bin/python3 "$scratch/other.py" >> "$scratch/theirs"
	i=$((i + 1))
done

median() { sort -n | awk '{ v[NR] = $1 } END { print (v[int((NR + 1) / 2)] + v[int(NR / 2) + 1]) / 2 }'; }
ours=$(median < "$scratch/ours")
writing=$(cut -d ' ' -f 1 "$scratch/theirs" | median)
building=$(cut -d ' ' -f 2 "$scratch/theirs" | median)

printf '10,000 entities, median of %s interleaved repetitions\n\n' "$repetitions"
printf '%-28s %10s %8s\n' writer 'ms' times
printf '%-28s %10.1f %8.1f\n' 'stilewright, sheet to DXF' "$ours" 1
awk -v o="$ours" -v w="$writing" -v b="$building" 'BEGIN {
	printf "%-28s %10.1f %8.1f\n", "ezdxf, write only", w, w / o
	printf "%-28s %10.1f %8.1f\n", "ezdxf, build and write", b, b / o
}'
