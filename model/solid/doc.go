// Package solid knows parts in space: a blank, what is cut away from it and
// what is bored into it; their sections, outlines, volumes and clashes.
//
// It does not know what a stile is. The frame is the project's: X to the
// right, Z up, Y from the room into the closet.
package solid
