package shop

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/render/dxf"
)

// asWritten is the setup as a file holds it: its lines moved for the kerf, if
// any, the least corner of what is cut out at the origin, arcs as the options
// ask. It errs when that breaks a line.
func (o Options) asWritten(s machining.Setup, kerf length.Length) (machining.Setup, error) {
	if kerf > 0 {
		moved, err := s.Compensate(kerf)
		if err != nil {
			return machining.Setup{}, err
		}
		s = moved
		if low := s.Outline().Bounds().Min; !slices.ContainsFunc(s.Contours, func(c machining.Contour) bool { return c.Operation == machining.Blank }) {
			s = moved.Shift(-low.X, -low.Y)
		}
	}
	written := s
	written.Contours = nil
	for _, c := range s.Contours {
		c.Path = o.segmented(c.Path)
		written.Contours = append(written.Contours, c)
	}
	if kerf == 0 && o.Segments == 0 {
		return written, nil
	}
	if faults := written.Lint(machining.Profile{}, false); len(faults) > 0 {
		return machining.Setup{}, fmt.Errorf("as written, %s", faults[0].Sentence)
	}
	return written, nil
}

// cutting is the written setup on its layers.
func (o Options) cutting(s machining.Setup) dxf.Cutting {
	c := dxf.Cutting{Unit: o.Unit, Release: o.Release}
	for _, k := range s.Contours {
		name := o.Names.Layer(k.Operation, k.Depth, s.Face, o.Unit)
		if !slices.ContainsFunc(c.Layers, func(l dxf.CuttingLayer) bool { return l.Name == name }) {
			c.Layers = append(c.Layers, dxf.CuttingLayer{Name: name, Colour: colourOf(k.Operation)})
		}
		c.Paths = append(c.Paths, dxf.CuttingPath{Layer: name, Path: k.Path})
	}
	return c
}

// segmented is the path with straight segments for its arcs where that is asked
// for. Circles stay: every reader knows them.
func (o Options) segmented(p plane.Path) plane.Path {
	if o.Segments <= 0 || isCircle(p) {
		return p
	}
	return p.Flatten(o.Segments)
}

// isCircle tells whether the path is a full circle.
func isCircle(p plane.Path) bool {
	return len(p) == 2 && p[0].Turn != plane.Straight && p[0].Turn == p[1].Turn && p[0].Centre == p[1].Centre
}

// colourOf is the palette colour an operation's layers have. Common practice,
// no source: shops go by the name.
func colourOf(o machining.Operation) int {
	return [...]int{8, 1, 6, 5, 3, 7}[o]
}

// longestWord is the most letters of a layer's word: what release 12 allows a
// name, less depth and face ("-1234_567891-BOTTOM").
const longestWord = 12

var wordForm = regexp.MustCompile(`^[A-Z][A-Z0-9_$-]*$`)

// layerNames holds the model's own layer words.
func (p *planner) layerNames() {
	names := p.job.Options.Names
	for i, name := range names {
		key := "shop.layers." + machining.Operation(i).String()
		if !wordForm.MatchString(name) || len(name) > longestWord {
			p.stop(key, RuleLayerName, "layer word “%s” of %d letters; at most %d of A to Z, 0 to 9, - _ $ can stand, a letter first", name, len(name), longestWord)
		}
		if k := slices.Index(names[:], name); k < i {
			p.stop(key, RuleLayerName, "the layers of %s and %s would both be called %s; give them two words", machining.Operation(k), machining.Operation(i), name)
		}
	}
}

// fileName tells what a file is: job, parts, material, thickness, quantity,
// revision, face, unit.
func (p *planner) fileName(w Work) string {
	o := p.job.Options
	name := []string{slug(p.set.Job, longestJob), labelsIn(w.Part.Labels), slug(w.Part.Material, longestJob), o.thickness(w.Part.Thickness), fmt.Sprintf("x%d", w.Part.Quantity)}
	if p.set.Revision != "" {
		name = append(name, "rev"+strings.ToUpper(slug(p.set.Revision, longestJob)))
	} else {
		name = append(name, "norev")
	}
	face := w.Setup.Face.String()
	if w.Setup.Face.Turned() {
		face += "-turned"
	}
	name = append(name, face)
	if w.Part.Order {
		name = append(name, "order-drawing")
	}
	if kerf := o.kerfOf(w.Part); kerf > 0 {
		name = append(name, "kerf"+kerf.Decimal()+"mm")
	}
	unit := "mm"
	if o.Unit == length.Inches {
		unit = "inch"
	}
	return strings.Join(append(name, unit), "_")
}

// longestJob and longestLabels hold names within what file systems take.
const (
	longestJob    = 40
	longestLabels = 40
)

// labelsIn joins labels; too many are cut short.
func labelsIn(labels []string) string {
	joined := strings.Join(labels, "-")
	if len(joined) > longestLabels {
		return fmt.Sprintf("%s-and-%d-more", labels[0], len(labels)-1)
	}
	return joined
}

// thickness writes a thickness in the file's unit.
func (o Options) thickness(t length.Length) string {
	if o.Unit == length.Inches {
		return o.figure(t) + "in"
	}
	return o.figure(t) + "mm"
}

// slug is a text in the characters every file system takes: letters, digits and
// single hyphens.
func slug(text string, longest int) string {
	var out strings.Builder
	gap := false
	for _, r := range strings.ToLower(text) {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') {
			gap = out.Len() > 0
			continue
		}
		if gap {
			out.WriteByte('-')
			gap = false
		}
		out.WriteRune(r)
	}
	if out.Len() == 0 {
		return "job"
	}
	return strings.Trim(out.String()[:min(longest, out.Len())], "-")
}
