// Package shop knows what a CNC shop or a laser cutter is sent for a set: one
// cutting for each distinct part and face that is worked, the pass that mills
// the rabbets of an assembled leaf, jigs for router and drill, nested sheets of
// panels, the list of all of them, and the cover sheets a price can be quoted
// from.
//
// It does not know how a drawing exchange file is written, nor how to find
// what is worked from which face; model/machining tells that from the solids.
// Parts are alike when their solids, names of material and thickness are: such
// parts share one file and count together.
//
// A cutting's origin is the lower left corner of the blank as it lies, X to the
// right, Y up. Pockets that run past the blank's left or lower edge are all
// there is below 0.
package shop
