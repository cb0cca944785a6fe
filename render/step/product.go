package step

import "fmt"

// A product is one entry of a file's tree: its definition, its shape and the
// frame its shape stands in.
type product struct{ definition, shape, origin ref }

// A tree writes products that share units and contexts.
type tree struct {
	*file
	space              ref // units and accuracy
	product, designing ref // contexts
}

// accuracy is how far in mm vertices may lie off what passes them: corners are
// whole nanometres, moved once or twice.
const accuracy = "5.E-6"

// assembly writes all products, the instances of the parts in the assembly and
// the colours.
func (f *file) assembly(name string, parts []Part, shells []*shell) {
	t := f.tree()
	var frames [][]ref
	origin := f.frame(vec{}, vec{0, 0, 1}, vec{1, 0, 0})
	items := []ref{origin}
	for _, p := range parts {
		var of []ref
		for _, at := range p.At {
			of = append(of, f.frame(in(at), vec{0, 0, 1}, vec{1, 0, 0}))
		}
		if len(of) == 0 {
			of = []ref{origin}
		}
		frames, items = append(frames, of), append(items, of...)
	}
	whole := product{shape: f.add("SHAPE_REPRESENTATION(%s,%s,%v)", text(name), list(unique(items)), t.space), origin: origin}
	t.define(&whole, name, "")
	var coloured []ref
	instance := 0
	for i, p := range parts {
		origin := f.frame(vec{}, vec{0, 0, 1}, vec{1, 0, 0})
		body := f.brep(p.Label, shells[i])
		one := product{shape: f.add("ADVANCED_BREP_SHAPE_REPRESENTATION(%s,(%v,%v),%v)", text(p.Label), origin, body, t.space), origin: origin}
		t.define(&one, p.Label, p.Name)
		coloured = append(coloured, f.styled(body, p.Colour))
		for k, frame := range frames[i] {
			instance++
			label := p.Label
			if len(frames[i]) > 1 {
				label = fmt.Sprintf("%s:%d", p.Label, k+1)
			}
			t.place(whole, one, frame, instance, label)
		}
	}
	f.add("MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',%s,%v)", list(coloured), t.space)
}

// unique is refs with repetitions of the first dropped.
func unique(refs []ref) []ref {
	kept := refs[:1]
	for _, r := range refs[1:] {
		if r != refs[0] {
			kept = append(kept, r)
		}
	}
	return kept
}

func (f *file) tree() tree {
	app := f.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')")
	f.add("APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,%v)", app)
	mm := f.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))")
	radian := f.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))")
	steradian := f.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())")
	within := f.add("UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(%s),%v,'distance_accuracy_value','vertices off curves and faces')", accuracy, mm)
	return tree{
		file: f,
		space: f.add("(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((%v))GLOBAL_UNIT_ASSIGNED_CONTEXT((%v,%v,%v))REPRESENTATION_CONTEXT('',''))",
			within, mm, radian, steradian),
		product:   f.add("PRODUCT_CONTEXT('',%v,'mechanical')", app),
		designing: f.add("PRODUCT_DEFINITION_CONTEXT('part definition',%v,'design')", app),
	}
}

// define writes the product of a shape.
func (t tree) define(p *product, label, name string) {
	shown := label
	if name != "" {
		shown = label + " " + name
	}
	it := t.add("PRODUCT(%s,%s,'',(%v))", text(label), text(shown), t.product)
	t.add("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(%v))", it)
	version := t.add("PRODUCT_DEFINITION_FORMATION('','',%v)", it)
	p.definition = t.add("PRODUCT_DEFINITION('design','',%v,%v)", version, t.designing)
	shape := t.add("PRODUCT_DEFINITION_SHAPE('','',%v)", p.definition)
	t.add("SHAPE_DEFINITION_REPRESENTATION(%v,%v)", shape, p.shape)
}

// place writes one instance of a part in the assembly, its origin at frame.
func (t tree) place(whole, part product, frame ref, number int, label string) {
	use := t.add("NEXT_ASSEMBLY_USAGE_OCCURRENCE('%d',%s,'',%v,%v,$)", number, text(label), whole.definition, part.definition)
	shape := t.add("PRODUCT_DEFINITION_SHAPE('','',%v)", use)
	move := t.add("ITEM_DEFINED_TRANSFORMATION('','',%v,%v)", part.origin, frame)
	relation := t.add("(REPRESENTATION_RELATIONSHIP('','',%v,%v)REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(%v)SHAPE_REPRESENTATION_RELATIONSHIP())",
		part.shape, whole.shape, move)
	t.add("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(%v,%v)", relation, shape)
}

// styled gives a body its colour.
func (f *file) styled(body ref, c [3]float64) ref {
	rgb := f.add("COLOUR_RGB('',%s,%s,%s)", decimal(c[0], colourPlaces), decimal(c[1], colourPlaces), decimal(c[2], colourPlaces))
	fill := f.add("FILL_AREA_STYLE('',(%v))", f.add("FILL_AREA_STYLE_COLOUR('',%v)", rgb))
	side := f.add("SURFACE_SIDE_STYLE('',(%v))", f.add("SURFACE_STYLE_FILL_AREA(%v)", fill))
	style := f.add("PRESENTATION_STYLE_ASSIGNMENT((%v))", f.add("SURFACE_STYLE_USAGE(.BOTH.,%v)", side))
	return f.add("STYLED_ITEM('',(%v),%v)", style, body)
}
