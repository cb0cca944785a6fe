// Package machining knows the work of a machine on one part: which face lies
// up, which lines its tool follows, how deep, and whether a shop's machine can
// do that at all.
//
// It does not know doors, files or paper. A part is a solid; Setups reads from
// its blank, cuts and bores what is worked from which face. A Setup is one part
// lying on the table with one face up, as data: contours, closed and made of
// straight edges and true arcs, each with an operation and a depth. Lint holds
// a setup to the rules of contours and to a shop's profile.
//
// A setup's frame: X to the right and Y up as one looks down on the face that
// lies up, the origin at the lower left corner of the blank. Depth is measured
// from that face into the part. Seen so, the back of a part is the front turned
// round its upright middle line: left and right change places, as they do when
// the part itself is turned over.
//
// Sizes are the finished ones; nothing is added for a tool or a beam unless
// Compensate is asked for it.
package machining
