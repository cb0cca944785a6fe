// Package drawing knows which views of a set go on which sheet, how they are
// dimensioned and what is written beside them. It does not know file formats.
//
// Every line of a view comes from the solids, by way of package view; this
// package chooses the windows, the scales and the figures.
package drawing
