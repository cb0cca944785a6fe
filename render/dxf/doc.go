// Package dxf knows the drawing exchange format: how a finished sheet becomes
// an ASCII DXF file of release 2000 (AC1015) that any reader opens.
//
// It does not know doors, views or what a mark means. X runs to the right and Y
// up, as on the sheet; lengths are written in millimetres.
//
// The file is drawn at full size: every paper coordinate is multiplied by the
// sheet's main scale, so that a 1:10 elevation measures true. Text heights and
// the line type scale grow with it. All entities stand in model space; the
// paper space that the format demands is empty.
//
// Group codes and their meaning are from the published DXF Reference (2000 and
// later); what readers really take is held by tests with two outside readers.
package dxf
