package hanging

import (
	"fmt"
	"strings"

	"stilewright/model/length"
)

const poundForce = 0.45359237 * gravity // N, exact by definition

// Text is the hanging in lines for a plain terminal, in the units.
func (h Hanging) Text(units length.Unit) string {
	style := length.Style{Unit: units, Mark: true}
	force := func(newtons float64) string {
		if units == length.Inches {
			return fmt.Sprintf("%.0f lbf", newtons/poundForce)
		}
		return fmt.Sprintf("%.0f N", newtons)
	}
	var out strings.Builder
	say := func(text string, values ...any) { fmt.Fprintf(&out, text+"\n", values...) }
	t := h.Track
	say("track: %d screws No. %d by %s, at %s; %s of thread in %s", len(t.At), t.Screw.Gauge, style.Format(t.Length), places(style, t.At), style.Format(t.Held), t.Wood)
	say("       if that is one piece over the opening; where only studs or joists stand behind the lining, find them and put screws there")
	say("       pulled with at most %s each, NDS lets them bear %s (%.1f times) and tests drew such screws out at %s", force(t.Most), force(t.Holds), t.Factor(), force(t.Breaks))
	if f := h.Fascia; f != nil {
		say("fascia: %d screws No. %d by %s, at %s", len(f.At), f.Screw.Gauge, style.Format(f.Length), places(style, f.At))
	}
	say("hangers: %s on the left one, %s on the right one", force(h.Load.Hanger[0]), force(h.Load.Hanger[1]))
	say("top rail: each joint carries %s, %s from the hanger; the rail's wood would bear %s", force(h.Rail.Joint), style.Format(h.Rail.Arm), h.Rail.margin())
	if s := h.Header; s != nil {
		say("header: sags %s under all leaves at its middle, %s; at most %s", style.Format(s.Sag), force(s.Load), style.Format(s.Most))
	}
	for _, g := range h.Guides {
		say("floor guide: %s from the opening's left and %s behind its front, below leaves %s and %s", style.Format(g.X), style.Format(g.Y), g.Between[0], g.Between[1])
	}
	for _, b := range h.Bumpers {
		side := "left"
		if b.Right {
			side = "right"
		}
		say("bumper: %s end of the %s channel, against the hanger of leaf %s with its middle at %s", side, b.Channel, b.Leaf, style.Format(b.Hanger))
	}
	return out.String()
}

// margin is how many times its load the rail bears, in words.
func (r Rail) margin() string {
	switch {
	case r.Arm == 0:
		return "it unbent: the hangers stand over the stiles"
	case r.Factor() == 0:
		return "what is not known"
	case r.Factor() >= 100:
		return "more than a hundred times that"
	}
	return fmt.Sprintf("%.0f times that", r.Factor())
}

func places(style length.Style, at []length.Length) string {
	var all []string
	for _, x := range at {
		all = append(all, style.Format(x))
	}
	return strings.Join(all, ", ")
}
