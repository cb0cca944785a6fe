package tolerance

import (
	"fmt"
	"math"

	"stilewright/model/length"
)

// A Part is one contributor to a clearance.
type Part struct {
	Name   string        // "panel width"
	Off    length.Length // plus or minus; 0 or more
	Share  float64       // of it that reaches the clearance; above 0
	Source string
}

// Reaches is what of the part reaches the clearance, plus or minus.
func (p Part) Reaches() length.Length { return length.Round(p.Off.MM() * p.Share) }

// A Stack is a clearance and what contributes to it.
type Stack struct {
	Name    string        // "face gap"
	Path    string        // of the key in a model a finding about it stands at
	Nominal length.Length // as drawn
	Parts   []Part
}

// Worst is what the clearance may come out off by when all parts fall on one
// side, plus or minus.
func (s Stack) Worst() length.Length {
	var sum length.Length
	for _, p := range s.Parts {
		sum += p.Reaches()
	}
	return sum
}

// Likely is the root of the sum of the squares, plus or minus.
func (s Stack) Likely() length.Length {
	var sum float64
	for _, p := range s.Parts {
		mm := p.Reaches().MM()
		sum += float64(mm * mm)
	}
	return length.Round(math.Sqrt(sum))
}

// Dominant is the part that contributes most, the first of equal ones.
func (s Stack) Dominant() Part {
	var most Part
	for _, p := range s.Parts {
		if most.Name == "" || p.Reaches() > most.Reaches() {
			most = p
		}
	}
	return most
}

// Weight is the dominant part's share of the sum of squares, 0 to 1.
func (s Stack) Weight() float64 {
	likely, most := s.Likely().MM(), s.Dominant().Reaches().MM()
	if likely == 0 {
		return 0
	}
	return float64(most*most) / float64(likely*likely)
}

// Text is the stack in one line, sizes in the style.
func (s Stack) Text(style length.Style) string {
	return fmt.Sprintf("%s %s: likely within ± %s, at worst ± %s; most of it from %s (± %s)",
		s.Name, style.Format(s.Nominal), style.Format(s.Likely()), style.Format(s.Worst()), s.Dominant().Name, style.Format(s.Dominant().Off))
}
