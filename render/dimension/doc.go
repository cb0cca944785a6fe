// Package dimension knows how a view is dimensioned: chains, running and
// overall rows around its outline, and notes on leaders, laid so that no
// lettering touches other lettering, an arrow or a line.
//
// It does not know what is measured, nor in which unit a figure is written; a
// function passed in writes it. Places along a row are model lengths, all else
// is paper: origin lower left, X to the right, Y up.
//
// Practice follows ISO 129-1 (extension lines with a gap, lettering above the
// line and read from below or from the right, small spaces with oblique
// strokes, running dimensions from a common origin); its figures in millimetres
// are in ink.go. The clauses are from memory, not quoted.
package dimension
