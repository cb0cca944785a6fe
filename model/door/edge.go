package door

// edges resolves the worked edges of the frame.
func (r *resolver) edges() {}

// workEdges rounds and chamfers the members' edges.
func (b *bench) workEdges() {}
