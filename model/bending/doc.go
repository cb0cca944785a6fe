// Package bending knows how a panel bends when a hand pushes its middle, and
// how far that draws its edges out of their seat.
//
// A panel counts as simply supported along all edges, which are free to draw in.
// It does not know what breaks: strength under a hand's small patch depends on
// the hand.
package bending
