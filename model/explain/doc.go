// Package explain knows how to tell where a size comes from: the tree of a
// figure back to what was measured, in plain text of at most 80 columns, or as
// JSON.
//
// It computes nothing and does not know what a size is for: what it tells
// stands in the figures. A figure is told whole once in a text; where it is
// taken again, its line alone is repeated.
package explain
