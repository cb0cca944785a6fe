package hanging

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// Screws are the screws of track or fascia.
type Screws struct {
	At      []length.Length // X in the set's frame, left to right
	Screw   catalog.WoodScrew
	Length  length.Length // under the head
	Through length.Length // what it goes through before the framing
	Held    length.Length // thread in the framing
	Most    float64       // N, the greatest pull on one of them
	Holds   float64       // N, what NDS lets one bear for good
	Breaks  float64       // N, at which tests drew such screws out
	Wood    string        // of the framing
	Source  string        // of Holds
}

// Factor is how many times its load a screw may bear by NDS; that is on the safe
// side of what draws it out.
func (s Screws) Factor() float64 { return s.Holds / s.Most }

// track places the track's screws and finds their length.
func (w *work) track() {
	body := w.set.Track.Solid.Blank
	most := w.sized("hanging.fixing.spacing", "hanging.fixing.spacing", w.model.Hanging.Fixing.Spacing, spacing)
	end := w.sized("hanging.fixing.end", "", nil, screwEnd)
	s := Screws{Screw: w.screw, Wood: w.framing.Name}
	s.At = w.spread("track.screw", body.From, body.To, end, most, "a screw so far from each end of the track, and evenly between, no further apart than the spacing", "hanging.fixing.end", "hanging.fixing.spacing", "track.length")
	s.Through = w.derive("track.screw.through", w.sized("hanging.header.lining", "hanging.header.lining", w.model.Hanging.Header.Lining, lining)+w.sized("track.wall", "", nil, trackWall), "lining and the track's top", "hanging.header.lining", "track.wall")
	s.Most = w.hanging.Load.Most
	w.length(&s, w.model.Hanging.Fixing.Screw.Length)
	w.hanging.Track = s
}

// length finds the screw's length: as stated, or the shortest sold that has the
// least hold in the framing and bears its load by NDS.
func (w *work) length(s *Screws, stated *length.Length) {
	density, source := w.framing.ScrewGravity()
	pull := catalog.Withdrawal(density, s.Screw.Diameter)
	perMM := pull.Newtons(length.Millimetre) * permanent
	s.Source = fmt.Sprintf("%v; G %.2f of %s: %v; for good: × %.1f, from memory", catalog.WithdrawalSource(), density, w.framing.Name, source, permanent)
	if stated != nil {
		s.Length = w.sized("track.screw.length", "hanging.fixing.screw.length", stated, leastHold)
	} else {
		least := w.sized("track.screw.least_hold", "", nil, leastHold)
		six := w.derive("track.screw.six_diameters", catalog.LeastPenetration(s.Screw.Diameter), "six diameters, what NDS asks of screws loaded sideways")
		load := w.derive("track.screw.for_load", length.Round(s.Most/perMM), fmt.Sprintf("%.0f N, one leaf's weight, ÷ %.1f N a millimetre of thread by NDS", s.Most, perMM))
		step := w.sized("track.screw.step", "", nil, screwStep)
		s.Length = w.derive("track.screw.length", (s.Through + max(least, six, load)).UpTo(step), "what it goes through and the largest of least hold, six diameters and what the load takes, up to the next length", "track.screw.through", "track.screw.least_hold", "track.screw.six_diameters", "track.screw.for_load", "track.screw.step")
	}
	s.Held = w.derive("track.screw.held", s.Length-s.Through, "screw less what it goes through", "track.screw.length", "track.screw.through")
	thread := max(0, s.Held)
	s.Holds = perMM * thread.MM()
	s.Breaks = catalog.UltimateWithdrawal(w.framing.Gravity, s.Screw.Diameter).Newtons(thread)
}

// fascia places the fascia's screws along the head. They bear the trim alone.
func (w *work) fascia() {
	f := w.set.Fascia
	if f == nil {
		return
	}
	least, most := f.Solid.Bounds()
	end, apart := w.sized("fascia.screw.end", "", nil, fasciaEnd), w.sized("fascia.screw.spacing", "", nil, fasciaApart)
	s := Screws{Screw: w.small, Wood: w.framing.Name}
	s.At = w.spread("fascia.screw", least.X, most.X, end, apart, "a screw so far from each end of the fascia, and evenly between", "fascia.screw.end", "fascia.screw.spacing")
	s.Through = f.Thickness
	step := w.sized("fascia.screw.step", "", nil, screwStep)
	s.Length = w.derive("fascia.screw.length", (2 * f.Thickness).UpTo(step), "twice the fascia's thickness, up to the next length: as much in the head's edge or a cleat as in the fascia", "fascia.thickness", "fascia.screw.step")
	s.Held = s.Length - s.Through
	s.Most = f.Solid.Volume() * w.set.Stock.Species.Density() / 1e9 * gravity / float64(len(s.At))
	density, source := w.framing.ScrewGravity()
	s.Holds = catalog.Withdrawal(density, s.Screw.Diameter).Newtons(s.Held) * permanent
	s.Breaks = catalog.UltimateWithdrawal(w.framing.Gravity, s.Screw.Diameter).Newtons(s.Held)
	s.Source = source.String()
	w.hanging.Fascia = &s
}
