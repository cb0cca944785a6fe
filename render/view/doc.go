// Package view turns solids into lines: elevations with their covered edges,
// and sections with their hatching. Its lines are at full size, in the
// coordinates of the view; putting them on paper is somebody else's work.
//
// It does not know what a leaf is, nor sheets beyond their layers, weights and
// line types.
package view
