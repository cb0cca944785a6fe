// Package sheet knows a finished page as data: strokes, fills, texts and
// dimensions, each with its place on the paper and everything a writer needs
// to set it down. It does not know doors, views or file formats.
//
// Paper coordinates are exact lengths, origin at the lower left corner, X to
// the right, Y up. Nobody changes a sheet once it is drawn.
package sheet
