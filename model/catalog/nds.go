package catalog

import "stilewright/model/length"

// nds is the National Design Specification for Wood Construction. The section
// numbers are those of the 2015 and 2018 editions.
func nds(place string, c Confirmation, note string) Source {
	return Source{Work: "National Design Specification for Wood Construction", Edition: "2018", Place: place, Confirmed: c, Note: note}
}

// A GravityGroup is a species group's specific gravity for fasteners: oven-dry
// mass over oven-dry volume, times water.
type GravityGroup struct {
	Name    string   // "douglas fir-larch"
	Also    []string // other names
	Gravity float64
	Source  Source
}

// NDSGravity is the species group of that name.
func NDSGravity(name string) (GravityGroup, error) {
	return find("species group", name, GravityGroups(), func(g GravityGroup) []string { return append([]string{g.Name}, g.Also...) })
}

// GravityGroups lists the species groups.
func GravityGroups() []GravityGroup {
	read, memory := nds("Table 12.3.3A", ReadOnce, ""), nds("Table 12.3.3A", FromMemory, "")
	return []GravityGroup{
		{"douglas fir-larch", []string{"df-l"}, .50, read},
		{"spruce-pine-fir", []string{"spf"}, .42, read},
		{"hem-fir", nil, .43, read},
		{"southern pine", nil, .55, read},
		{"eastern white pine", nil, .36, read},
		{"ponderosa pine", nil, .43, read},
		{"western cedars", nil, .36, read},
		{"redwood", nil, .37, read},
		{"red oak", nil, .67, read},
		{"white oak", nil, .73, memory},
		{"red maple", nil, .58, read},
	}
}

// A Pull is a withdrawal load per length of thread, N per mm.
type Pull float64

// PoundsPerInch is the load in pounds-force per inch of thread.
func (p Pull) PoundsPerInch() float64 { return float64(p) / lbfPerInchNmm }

// Newtons is what a length of thread holds, N.
func (p Pull) Newtons(thread length.Length) float64 { return float64(p) * thread.MM() }

// Withdrawal is the reference design load of a wood screw drawn out of side
// grain, per length of thread that is in the main member: W = 2850·G²·D lbf per
// inch, D in inches (NDS 12.2.2; see WithdrawalSource). Screws in end grain
// carry none. Adjust it for duration, moisture and temperature as NDS asks.
func Withdrawal(gravity float64, diameter length.Length) Pull {
	return Pull(2850 * gravity * gravity * diameter.Inches() * lbfPerInchNmm)
}

// WithdrawalSource is where Withdrawal comes from.
func WithdrawalSource() Source {
	return nds("12.2.2", ReadTwice, "W = 2850 G² D lbf per inch of thread")
}

// UltimateWithdrawal is the load at which tests drew wood screws out of side
// grain, per length of thread: p = 15 700·G²·D lbf per inch, D in inches, G at
// 12 % moisture; it is no design load (see UltimateWithdrawalSource).
func UltimateWithdrawal(gravity float64, diameter length.Length) Pull {
	return Pull(15_700 * gravity * gravity * diameter.Inches() * lbfPerInchNmm)
}

// UltimateWithdrawalSource is where UltimateWithdrawal comes from.
func UltimateWithdrawalSource() Source {
	return handbook("ch. 8, wood screws", ReadOnce, "p = 15700 G² D L lbf; lead hole 70 % of the root in softwood, 90 % in hardwood")
}

// LeastPenetration is the least length of a screw in the main member for it to
// carry load sideways, 6·D, and FullPenetration the length from which it
// carries all of it, 10·D.
func LeastPenetration(diameter length.Length) length.Length { return 6 * diameter }

// FullPenetration is 10·D; see LeastPenetration.
func FullPenetration(diameter length.Length) length.Length { return 10 * diameter }

// PenetrationSource is where LeastPenetration and FullPenetration come from.
func PenetrationSource() Source { return nds("12.1.5.6", ReadOnce, "the 10 D is from memory") }

// ReductionTerm is K_D, by which NDS divides the lateral yield load of thin
// fasteners: 2.2 up to 0.17 in, 10·D + 0.5 (D in inches) up to 0.25 in. Thicker
// fasteners follow another rule, and ok is false.
func ReductionTerm(diameter length.Length) (k float64, ok bool) {
	switch {
	case diameter <= 0 || diameter >= in/4:
		return 0, false
	case diameter <= 170*mil:
		return 2.2, true
	}
	return float64(10*diameter.Inches()) + .5, true
}

// ReductionSource is where ReductionTerm comes from.
func ReductionSource() Source { return nds("Table 12.3.1B", ReadOnce, "table number from memory") }
