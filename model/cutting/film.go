package cutting

import (
	"fmt"
	"sort"

	"stilewright/model/length"
)

// A FilmDirection is the way the roll's length must lie on a face.
type FilmDirection int

// The directions: the film's length up the face's height, across its width, or
// whichever needs less film.
const (
	EitherWay FilmDirection = iota
	UpTheFace
	AcrossTheFace
)

// String is the direction in words.
func (d FilmDirection) String() string {
	return [...]string{"either way", "up the face", "across the face"}[d]
}

// A FilmFace is a face to be covered, a number of times.
type FilmFace struct {
	Label         string
	Width, Height length.Length // more than 0
	Quantity      int           // 1 or more
	Direction     FilmDirection
}

// A FilmJob is what is to be covered and from what roll.
type FilmJob struct {
	Faces []FilmFace
	// RollWidth is the width of the roll; RollLength what is on one roll, 0 for
	// as much as needed.
	RollWidth, RollLength length.Length
	// Overlap is how far neighbouring strips cover each other on a face that is
	// wider than the roll; less than RollWidth.
	Overlap length.Length
	// Margin is added at each of a face's four edges, to be trimmed on the face.
	Margin length.Length
}

// A Strip is film for one face, or one of several side by side on it.
type Strip struct {
	Face int // index into the job's Faces
	// Number of Of strips of this face, from 1, from the left or bottom edge.
	Number, Of int
	// Width lies across the roll; Length along it.
	Width, Length length.Length
	// At is the strip's near edge, from the roll's left edge.
	At length.Length
	// Direction is how the strip's length lies on the face, never EitherWay.
	Direction FilmDirection
}

// A Pull is one length taken from the roll and slit into strips.
type Pull struct {
	Length length.Length
	Strips []Strip // from the roll's left edge
}

// A FilmLayout is a complete answer to a FilmJob.
type FilmLayout struct {
	Pulls []Pull // the longest first
	// Length is the sum of all pulls; Bound is proven: with these strips, no
	// layout pulls less.
	Length, Bound length.Length
	Proven        bool
	// Rolls is how many rolls the pulls take when none is joined; 0 where
	// RollLength is 0.
	Rolls int
	// Areas in mm²: pulled, on the faces, and the rest (overlaps, margins, and
	// what is slit off).
	Pulled, Covered, Waste float64
}

// Faults are all broken rules of the job, joined.
func (j FilmJob) Faults() error {
	var found faults
	for _, l := range []length.Length{j.RollWidth, j.RollLength, j.Overlap, j.Margin} {
		if l < 0 || l > length.Longest {
			found.add(RuleSize, "", "a size of the roll is %s; it must lie from 0 to %s", mm(l), mm(length.Longest))
		}
	}
	if j.RollWidth <= 0 {
		found.add(RuleSize, "", "the roll is %s wide; it must be more than 0", mm(j.RollWidth))
	}
	if j.RollWidth > 0 && j.Overlap >= j.RollWidth {
		found.add(RuleOverlap, "", "overlap is %s, the roll only %s wide; overlap less", mm(j.Overlap), mm(j.RollWidth))
	}
	if len(j.Faces) == 0 {
		found.add(RuleEmpty, "", "there are 0 faces for a roll of %s; list at least one", mm(j.RollWidth))
	}
	for _, f := range j.Faces {
		j.checkFace(f, &found)
	}
	if err := found.err(); err != nil {
		return err
	}
	if n := j.stripCount(); n > mostParts {
		found.add(RuleTooMany, "", "%d strips; the limit is %d: split the job or take a wider roll", n, mostParts)
		return found.err()
	}
	return j.checkLengths()
}

func (j FilmJob) checkFace(f FilmFace, found *faults) {
	switch {
	case f.Quantity <= 0:
		found.add(RuleQuantity, f.Label, "quantity is %d; it must be 1 or more", f.Quantity)
	case f.Quantity > mostParts:
		found.add(RuleTooMany, f.Label, "quantity is %d; the limit is %d", f.Quantity, mostParts)
	case f.Width <= 0 || f.Height <= 0:
		found.add(RuleSize, f.Label, "the face is %s × %s; both must be more than 0", mm(f.Width), mm(f.Height))
	case max(f.Width, f.Height) > LongestBoard:
		found.add(RuleTooLong, f.Label, "the face is %s × %s; the limit is %s", mm(f.Width), mm(f.Height), mm(LongestBoard))
	case f.Direction < EitherWay || f.Direction > AcrossTheFace:
		found.add(RuleDirection, f.Label, "direction is number %d; there are %d", f.Direction, AcrossTheFace+1)
	}
}

// stripCount is how many strips the job makes, at most mostParts + 1.
func (j FilmJob) stripCount() int {
	n := 0
	for _, f := range j.Faces {
		across, _, _ := j.lie(f)
		per := j.strips(across)
		if per > mostParts {
			return mostParts + 1
		}
		n = min(n+per*f.Quantity, mostParts+1)
	}
	return n
}

// checkLengths finds strips longer than the roll.
func (j FilmJob) checkLengths() error {
	var found faults
	for _, f := range j.Faces {
		if _, along, _ := j.lie(f); j.RollLength > 0 && along > j.RollLength {
			found.add(RuleTooBig, f.Label, "a strip is %s long, the roll only %s; turn the film or take a longer roll",
				mm(along), mm(j.RollLength))
		}
	}
	return found.err()
}

// strips is how many strips cover a width, margins included: n strips cover
// n·roll − (n − 1)·overlap.
func (j FilmJob) strips(across length.Length) int {
	if across <= j.RollWidth {
		return 1
	}
	step := j.RollWidth - j.Overlap
	return int((across - j.Overlap + step - 1) / step)
}

// lie is the face's size across and along the roll, margins included. Where
// either way is allowed, the one that needs less film for one face is taken,
// and up the face of two equal ones.
func (j FilmJob) lie(f FilmFace) (across, along length.Length, d FilmDirection) {
	w, h := f.Width+2*j.Margin, f.Height+2*j.Margin
	d = f.Direction
	if d == EitherWay {
		d = UpTheFace
		up, over := j.film(w, h), j.film(h, w)
		tooLong := j.RollLength > 0 && h > j.RollLength
		if over < up || tooLong {
			d = AcrossTheFace
		}
	}
	if d == AcrossTheFace {
		return h, w, d
	}
	return w, h, d
}

// film is the area of the strips that cover one face: every strip but the last
// is as wide as the roll.
func (j FilmJob) film(across, along length.Length) float64 {
	covers := across + length.Length(j.strips(across)-1)*j.Overlap
	return float64(covers.MM() * along.MM())
}

// LayOutFilm works out the lengths to pull and how each is slit: strips are
// taken by falling length, each beside the longest pull that has room for its
// width, so that a pull is as long as its first strip.
func LayOutFilm(j FilmJob) (FilmLayout, error) {
	if err := j.Faults(); err != nil {
		return FilmLayout{}, err
	}
	strips := j.allStrips()
	best := j.pulls(strips, false)
	if snug := j.pulls(strips, true); snug.Length < best.Length {
		best = snug
	}
	best.Bound = min(j.bound(strips), best.Length)
	best.Proven = best.Bound == best.Length
	best.Rolls = j.rolls(best.Pulls)
	j.areas(&best)
	return best, nil
}

// allStrips are the job's strips, the longest and then the widest first.
func (j FilmJob) allStrips() []Strip {
	var all []Strip
	for i, f := range j.Faces {
		across, along, d := j.lie(f)
		of := j.strips(across)
		for range f.Quantity {
			for n := 1; n <= of; n++ {
				s := Strip{Face: i, Number: n, Of: of, Width: j.RollWidth, Length: along, Direction: d}
				if n == of {
					s.Width = across - length.Length(of-1)*(j.RollWidth-j.Overlap)
				}
				all = append(all, s)
			}
		}
	}
	sort.SliceStable(all, func(a, b int) bool {
		if all[a].Length != all[b].Length {
			return all[a].Length > all[b].Length
		}
		return all[a].Width > all[b].Width
	})
	return all
}

// pulls sets each strip beside the first pull with room, or the one with the
// least room when snug.
func (j FilmJob) pulls(strips []Strip, snug bool) FilmLayout {
	var l FilmLayout
	var used []length.Length
	for _, s := range strips {
		at := -1
		for p := range l.Pulls {
			if used[p]+s.Width <= j.RollWidth && (at < 0 || snug && used[p] > used[at]) {
				at = p
			}
		}
		if at < 0 {
			at = len(l.Pulls)
			l.Pulls, used = append(l.Pulls, Pull{Length: s.Length}), append(used, 0)
			l.Length += s.Length
		}
		s.At = used[at]
		used[at] += s.Width
		l.Pulls[at].Strips = append(l.Pulls[at].Strips, s)
	}
	return l
}

// bound is the greater of two lengths no layout undercuts: the strips' area by
// the roll's width, and the lengths of the strips wider than half the roll.
func (j FilmJob) bound(strips []Strip) length.Length {
	var wide length.Length
	var area wideSum
	for _, s := range strips {
		area.add(s.Width, s.Length)
		if 2*s.Width > j.RollWidth {
			wide += s.Length
		}
	}
	return max(wide, area.over(j.RollWidth))
}

// rolls is how many rolls the pulls take, first fit; at least as many as needed.
func (j FilmJob) rolls(pulls []Pull) int {
	if j.RollLength == 0 {
		return 0
	}
	var left []length.Length
next:
	for _, p := range pulls {
		for r := range left {
			if p.Length <= left[r] {
				left[r] -= p.Length
				continue next
			}
		}
		left = append(left, j.RollLength-p.Length)
	}
	return len(left)
}

func (j FilmJob) areas(l *FilmLayout) {
	l.Pulled = float64(l.Length.MM() * j.RollWidth.MM())
	l.Covered = 0
	for _, f := range j.Faces {
		l.Covered += float64(float64(f.Width.MM()*f.Height.MM()) * float64(f.Quantity))
	}
	l.Waste = l.Pulled - l.Covered
}

// CheckFilm replays a layout against its job: strips of a pull lie side by side
// within the roll and are no longer than the pull; each face gets all its
// strips, which cover it with the overlap asked for; the figures add up again.
func CheckFilm(j FilmJob, l FilmLayout) error {
	covered := make([]length.Length, len(j.Faces)) // sum of strip widths
	count := make([]int, len(j.Faces))
	sum := length.Length(0)
	for n, p := range l.Pulls {
		sum += p.Length
		free := length.Length(0)
		for _, s := range p.Strips {
			if s.Face < 0 || s.Face >= len(j.Faces) {
				return fmt.Errorf("pull %d: face number %d of %d", n+1, s.Face, len(j.Faces))
			}
			f := j.Faces[s.Face]
			_, along, d := j.lie(f)
			if s.At < free || s.Width <= 0 || s.At+s.Width > j.RollWidth || s.Length > p.Length {
				return fmt.Errorf("pull %d: strip of %q at %s, %s wide and %s long, does not fit", n+1, f.Label, mm(s.At), mm(s.Width), mm(s.Length))
			}
			if s.Length != along || s.Direction != d {
				return fmt.Errorf("pull %d: strip of %q is %s long, asked for %s", n+1, f.Label, mm(s.Length), mm(along))
			}
			free = s.At + s.Width
			covered[s.Face] += s.Width
			count[s.Face]++
		}
		if j.RollLength > 0 && p.Length > j.RollLength {
			return fmt.Errorf("pull %d: %s, the roll has %s", n+1, mm(p.Length), mm(j.RollLength))
		}
	}
	for i, f := range j.Faces {
		across, _, _ := j.lie(f)
		want := across * length.Length(f.Quantity)
		laps := j.Overlap * length.Length(count[i]-f.Quantity)
		if count[i] < f.Quantity || covered[i]-laps != want {
			return fmt.Errorf("face %q: %d strips cover %s of %s", f.Label, count[i], mm(covered[i]-laps), mm(want))
		}
	}
	if sum != l.Length || l.Bound > l.Length || l.Proven != (l.Bound == l.Length) {
		return fmt.Errorf("pulls add up to %s, the layout says %s, bound %s", mm(sum), mm(l.Length), mm(l.Bound))
	}
	return nil
}
