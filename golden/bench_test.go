package golden

import (
	"bytes"
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/drawing"
	"stilewright/render/dxf"
	"stilewright/render/packet"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

// each runs a benchmark for every sample. Run it with
//
//	go test ./golden/ -run '^$' -bench .
func each(b *testing.B, body func(b *testing.B, s sample)) {
	for _, s := range samples(b) {
		b.Run(s.name, func(b *testing.B) {
			b.ReportAllocs()
			body(b, s)
		})
	}
}

func BenchmarkModelToSheets(b *testing.B) {
	each(b, func(b *testing.B, s sample) {
		for b.Loop() {
			set, err := resolved(s.name)
			require.NoError(b, err)
			_, err = drawing.Sheets(set)
			require.NoError(b, err)
		}
	})
}

// written benches one writer on all sheets of a sample, in bytes written.
func written(write func(io.Writer, sheet.Sheet) error) func(b *testing.B, s sample) {
	return func(b *testing.B, s sample) {
		var out bytes.Buffer
		for b.Loop() {
			out.Reset()
			for _, page := range s.sheets {
				require.NoError(b, write(&out, page))
			}
		}
		b.SetBytes(int64(out.Len()))
	}
}

func BenchmarkSheetsToSVG(b *testing.B) { each(b, written(svg.Write)) }

func BenchmarkSheetsToDXF(b *testing.B) { each(b, written(dxf.Write)) }

// BenchmarkPacket makes every file of a packet from its set, in memory.
func BenchmarkPacket(b *testing.B) {
	each(b, func(b *testing.B, s sample) {
		for b.Loop() {
			_, err := packet.Of(s.set)
			require.NoError(b, err)
		}
	})
}
