// Package pdf knows the portable document format: how a set of finished sheets
// becomes one PDF file, a page a sheet, that prints at its true size.
//
// It does not know doors, views or what a mark means. Every page's content is
// in millimetres with the sheet's own origin and axes; one matrix at its head
// turns them into points of 1/72 in. Numbers are written to a tenth of a
// micrometre. The drawing is black on white, in the layers of the sheets, its
// text in the embedded typeface and kept as text.
//
// The structure is that of ISO 32000-1 (PDF 1.7), with /Enforce from ISO
// 32000-2. The file has no date but the one it is given, its ID is a hash of
// its content, and nothing in it is compressed: the same sheets give the same
// bytes, and two files can be compared by eye.
package pdf
