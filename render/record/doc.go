// Package record writes the resolved set as JSON for other programs to read.
// It does not know drawings.
//
// The file is one object:
//
//	format   "stilewright resolved set", and version, now 1
//	job, drawn, by, revision, units
//	lengths  every resolved length in the order it was resolved: name; mm, exact
//	         decimal text; nm, whole nanometres; shown, as on the drawings; and how it came about:
//	         given (the path in the model file), or formula with from (the names of the
//	         lengths it takes), or reason and source of a default
//	leaves   each leaf in its closed place: label, track, and at, the place of its lower left front
//	         corner in the set's frame (X right, Z up from the floor's highest point, Y from the room into
//	         the closet), as mm text
//	parts    the parts of one leaf: label, name, role, material, and from and to, opposite corners of its
//	         blank in the leaf's frame, as mm text; volume_mm3 and mass_kg
//	screws   of one leaf: for, head, tip and diameter, as mm text
//
// New fields may be added; none changes its meaning within a version.
package record
