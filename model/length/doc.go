// Package length knows lengths: exact ones, how a woodworker writes them, and
// how they are divided so that the parts add up again.
//
// It does not know points, areas or drawings. A length is a count of whole
// nanometres, so the inch (25.4 mm exactly, international yard and pound
// agreement of 1959) and its sixty-fourths are whole counts, sums of trade
// sizes close and == needs no tolerance.
package length
