package catalog

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

func TestLookUpAsWritten(t *testing.T) {
	for written, want := range map[string]string{
		"ponderosa pine": "ponderosa pine", "Ponderosa  Pine": "ponderosa pine", "Pine, ponderosa": "ponderosa pine",
		"PONDEROSA-PINE": "ponderosa pine", " douglas fir ": "douglas-fir", "Hard Maple": "sugar maple",
		"yellow poplar": "yellow-poplar", "maple, soft": "red maple", "Western Red Cedar": "western redcedar",
	} {
		if got, err := Species(written); err != nil || got.Name != want {
			t.Errorf("Species(%q) = %q, %v; want %q", written, got.Name, err, want)
		}
	}
}

func TestUnknownNameSuggests(t *testing.T) {
	for _, row := range []struct {
		written string
		look    func(string) error
		near    string // the first suggestion; empty for none
	}{
		{"pondarosa pine", species, "ponderosa pine"},
		{"waltnut", species, "walnut"},
		{"oak", species, "red oak"},
		{"spruse", species, "spruce"},
		{"titanium", species, ""},
		{"", species, ""},
		{" - , ", species, ""},
		{strings.Repeat("pine ", 10_000), species, ""},
		{"policarbonate", sheet, "polycarbonate"},
		{"frosted glass", sheet, "float glass"},
		{"two-chanel", track, "two-channel"},
		{"A5", paper, "A4"},
		{"1:6", scale, "1:1"},
		{"dri", season, "dry"},
	} {
		var unknown *UnknownName
		if err := row.look(row.written); !errors.As(err, &unknown) {
			t.Errorf("%.20q: got %v, want an UnknownName", row.written, err)
			continue
		}
		if len(unknown.Known) == 0 || len(unknown.Error()) > 1000 {
			t.Errorf("%.20q: %d known, message %q", row.written, len(unknown.Known), unknown)
		}
		switch {
		case row.near == "" && len(unknown.Nearest) > 0:
			t.Errorf("%.20q: suggests %q, want nothing", row.written, unknown.Nearest)
		case row.near == "" && !strings.Contains(unknown.Error(), unknown.Known[0]):
			t.Errorf("%.20q: %q does not list what is known", row.written, unknown)
		case row.near != "" && (len(unknown.Nearest) == 0 || unknown.Nearest[0] != row.near):
			t.Errorf("%.20q: suggests %q, want %q first", row.written, unknown.Nearest, row.near)
		case row.near != "" && !strings.Contains(unknown.Error(), row.near):
			t.Errorf("%.20q: %q does not name %q", row.written, unknown, row.near)
		}
	}
}

func species(name string) error { _, err := Species(name); return err }
func sheet(name string) error   { _, err := Sheet(name); return err }
func track(name string) error   { _, err := Track(name); return err }
func paper(name string) error   { _, err := PaperSize(name); return err }
func scale(name string) error   { _, err := ScaleNamed(name); return err }
func season(name string) error  { _, err := ParseSeason(name); return err }

// Every name a table prints must find its own row again.
func TestEveryNameFindsItsRow(t *testing.T) {
	for _, row := range Woods() {
		for _, name := range append(row.Also, row.Name, strings.ToUpper(row.Name)) {
			if got, err := Species(name); err != nil || got.Name != row.Name {
				t.Errorf("Species(%q) = %q, %v; want %q", name, got.Name, err, row.Name)
			}
		}
		if _, err := NDSGravity(row.NDS); row.NDS != "" && err != nil {
			t.Errorf("%s: %v", row.Name, err)
		}
	}
	for _, row := range slices.Concat(ISOScales(), InchScales()) {
		for _, name := range append(row.Also, row.Name) {
			if got, err := ScaleNamed(name); err != nil || got.Name != row.Name {
				t.Errorf("ScaleNamed(%q) = %q, %v; want %q", name, got.Name, err, row.Name)
			}
		}
	}
	for _, row := range Humidities() {
		if _, err := Sheet(row.Sheet); err != nil {
			t.Errorf("Humidities: %v", err)
		}
	}
}

// The papers a model file may name are in the catalogue under those names.
func TestPapersOfTheModelFile(t *testing.T) {
	for _, name := range strings.Fields("A4 A3 A2 A1 letter tabloid ansi-c ansi-d arch-b arch-c arch-d") {
		if got, err := PaperSize(name); err != nil || got.Name != name {
			t.Errorf("PaperSize(%q) = %q, %v", name, got.Name, err)
		}
	}
}

func TestDistance(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"kitten", "sitting", 3}, {"rail", "rail", 0}, {"stile", "style", 1}} {
		if got := distance([]rune(row.a), []rune(row.b)); got != row.want {
			t.Errorf("%q to %q: %d, want %d", row.a, row.b, got, row.want)
		}
	}
}

// A listing is built anew: spoiling one leaves the next as it was.
func TestListingsAreOwned(t *testing.T) {
	Woods()[0].Also[0] = "spoilt"
	NominalThicknesses()[0].Also[0] = "spoilt"
	if _, err := Species("spoilt"); err == nil {
		t.Error("a caller changed the woods")
	}
	if NominalThicknesses()[0].Also[0] == "spoilt" {
		t.Error("a caller changed the nominal sizes")
	}
}

func FuzzLookUp(f *testing.F) {
	for _, seed := range []string{"2x6", "5/4 x 6", "x", "xx", "pine", "\xff", "×"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if board, err := ParseBoard(text); err == nil {
			if again, err := ParseBoard(board.String()); err != nil || again.String() != board.String() {
				t.Errorf("%q reads as %s, which reads as %s, %v", text, board, again, err)
			}
		}
		if wood, err := Species(text); err == nil && wood.Name == "" {
			t.Errorf("%q is a wood without a name", text)
		}
	})
}
