// Package svg knows scalable vector graphics: how a finished sheet becomes an
// SVG file that prints at its true size.
//
// It does not know doors, views or what a mark means. One unit of the file is
// one millimetre on paper; Y, which runs upwards on a sheet, is turned over once,
// as numbers are written. The drawing is black on white.
//
// Elements and attributes are from SVG 1.1 (W3C Recommendation, 2011), print
// rules from CSS Paged Media.
package svg
