// Package plane knows flat geometry: points, straight and circular edges,
// closed outlines, and what they enclose together, apart or in common.
//
// It does not know doors or paper. Coordinates are exact lengths, X to the
// right and Y up; which way of space they stand for is the caller's business.
// Orientation of straight edges is decided in 128-bit integers and needs no
// tolerance; only arcs, and points that fall between whole nanometres, are
// computed in floating point, and return to lengths through length.Round.
package plane
