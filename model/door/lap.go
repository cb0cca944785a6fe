package door

// halfLap resolves the half-lap joint.
func (r *resolver) halfLap() {
	r.stop("leaf.joint.kind", "not-yet", "half-laps are not made yet")
}

// bridle resolves the bridle joint.
func (r *resolver) bridle() {
	r.stop("leaf.joint.kind", "not-yet", "bridle joints are not made yet")
}

// halfLapEnd cuts one end's lap.
func (b *bench) halfLapEnd(m Meeting) {}

// bridleEnd cuts one end's bridle joint.
func (b *bench) bridleEnd(m Meeting) {}
