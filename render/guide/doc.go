// Package guide knows in which order a set of doors is built, and says so with the
// numbers of one job: a Guide is data, which WriteHTML writes as one page that
// needs nothing else, and Sheets lays on pages of paper.
//
// Only the work that a set has is told: no step on dowels where nothing is
// dowelled. Every number is a figure of the set or of its hanging, a catalogue's,
// or reckoned from places of the leaf; a step names the figures it takes, under
// the names that explain knows. What is said beside the numbers is common
// practice, no source, and gives way to the manuals of the machines, to local
// codes and to licensed practice.
package guide
