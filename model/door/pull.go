package door

// pull resolves the flush pulls.
func (r *resolver) pull() {}

// guide resolves the floor guide's groove.
func (r *resolver) guide() {}

// letIn cuts the mortises of the pulls.
func (b *bench) letIn() {}

// guideGroove cuts the floor guide's groove.
func (b *bench) guideGroove() {}

// hangerHoles bores the holes of the hangers' screws.
func (b *bench) hangerHoles() {}
