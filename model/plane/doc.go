// Package plane knows flat geometry: points, straight and circular edges,
// closed outlines, and what they enclose together, apart or in common.
//
// It does not know doors or paper. Coordinates are exact lengths, X to the
// right and Y up; which way of space they stand for is the caller's business.
// Orientation of straight edges is decided in 128-bit integers and needs no
// tolerance; only arcs, and points that fall between whole nanometres, are
// computed in floating point, and return to lengths through length.Round.
// Since such points lie a little off their edges, the booleans take what is
// within 2 nm for one (see near); a whole sheet of work stays exact to that.
package plane
