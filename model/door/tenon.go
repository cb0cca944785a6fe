package door

// tenon resolves the tenon joint, loose or not.
func (r *resolver) tenon(kind string) {
	r.stop("leaf.joint.kind", "not-yet", "tenons are not made yet")
}

// tenonEnd cuts one end's tenon and mortise.
func (b *bench) tenonEnd(m Meeting) {}
