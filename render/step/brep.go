package step

// brep writes a shell as one solid body.
func (f *file) brep(label string, s *shell) ref {
	w := shellWriter{file: f, shell: s, vertices: map[int]ref{}, curves: map[int]ref{}}
	var faces []ref
	for _, face := range s.faces {
		faces = append(faces, w.face(face))
	}
	return f.add("MANIFOLD_SOLID_BREP(%s,%v)", text(label), f.add("CLOSED_SHELL('',%s)", list(faces)))
}

// A shellWriter knows which vertices and edges are written, since faces share
// them.
type shellWriter struct {
	*file
	shell    *shell
	vertices map[int]ref
	curves   map[int]ref
}

func (w *shellWriter) face(f face) ref {
	var bounds []ref
	for i, loop := range f.loops {
		var uses []ref
		for _, u := range loop {
			uses = append(uses, w.add("ORIENTED_EDGE('',*,*,%v,%s)", w.edge(u.edge), logical(!u.back)))
		}
		kind := "FACE_BOUND"
		if i == 0 {
			kind = "FACE_OUTER_BOUND"
		}
		bounds = append(bounds, w.add("%s('',%v,.T.)", kind, w.add("EDGE_LOOP('',%s)", list(uses))))
	}
	return w.add("ADVANCED_FACE('',%s,%v,%s)", list(bounds), w.surface(f.surface), logical(!f.hollow))
}

func (w *shellWriter) surface(s surface) ref {
	if s.shape == round {
		return w.add("CYLINDRICAL_SURFACE('',%v,%s)", w.frame(s.at, s.axis, s.start), decimal(s.radius, lengthPlaces))
	}
	return w.add("PLANE('',%v)", w.frame(s.at, s.axis, s.axis.aside()))
}

func (w *shellWriter) edge(i int) ref {
	if r, written := w.curves[i]; written {
		return r
	}
	e := w.shell.edges[i]
	from, to := w.vertex(e.from), w.vertex(e.to)
	w.curves[i] = w.add("EDGE_CURVE('',%v,%v,%v,.T.)", from, to, w.curve(e))
	return w.curves[i]
}

func (w *shellWriter) curve(e edge) ref {
	if e.shape == straight {
		from := w.shell.points[e.from]
		way := w.shell.points[e.to].minus(from).unit()
		return w.add("LINE('',%v,%v)", w.file.point(from), w.add("VECTOR('',%v,1.)", w.direction(way)))
	}
	frame := w.frame(e.centre, e.axis, e.major)
	if e.a-e.b <= circular {
		return w.add("CIRCLE('',%v,%s)", frame, decimal(e.b, lengthPlaces))
	}
	return w.add("ELLIPSE('',%v,%s,%s)", frame, decimal(e.a, lengthPlaces), decimal(e.b, lengthPlaces))
}

// circular is by how many mm half axes may differ and still be written as one
// radius: a thousandth of a nanometre.
const circular = 1e-9

func (w *shellWriter) vertex(i int) ref {
	if r, written := w.vertices[i]; written {
		return r
	}
	w.vertices[i] = w.add("VERTEX_POINT('',%v)", w.file.point(w.shell.points[i]))
	return w.vertices[i]
}

func logical(yes bool) string {
	if yes {
		return ".T."
	}
	return ".F."
}
