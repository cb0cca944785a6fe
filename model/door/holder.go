package door

// holder resolves what holds the panels.
func (r *resolver) holder() {
	leaf := &r.set.Leaf
	leaf.HeldBy = r.model.Panel.HeldBy.Kind
	if leaf.HeldBy == "" {
		leaf.HeldBy = "edge-washer"
	}
	switch leaf.HeldBy {
	case "edge-washer":
		r.washer()
	case "stop", "bead":
		r.strip()
	case "sealant":
		r.sealant()
	}
}

// strip resolves stops or beads.
func (r *resolver) strip() {
	r.stop("panel.held_by", "not-yet", "stops and beads are not made yet")
}

// sealant resolves the bed of sealant.
func (r *resolver) sealant() {
	r.stop("panel.held_by", "not-yet", "sealant is not made yet")
}

// hold enters what holds the panel of a lite.
func (b *bench) hold(lite int) {
	if b.leaf.HeldBy == "edge-washer" {
		b.washers(lite)
	}
}
