// Package step knows the exchange format for solids of ISO 10303-21 with the
// schema AUTOMOTIVE_DESIGN (AP214): how parts and where they stand become a
// file that other programs open as true solids, one named product a part.
//
// It does not know doors. Solids are bounded exactly, by planes and cylinders;
// nothing is cut into triangles. Lengths are written in millimetres with fixed
// decimals, in the frame of the solids given. A vertex may lie 2 nm off a
// curve or a face that passes it, since parts are counted in whole nanometres;
// the file says so.
//
// What it cannot bound exactly it refuses, saying where and why: what
// solid.Solid.Shell refuses (round or slanted prisms of different axes that
// meet, bores along the axes among them, and a body that falls into pieces or
// touches itself), and a bore aslant to the axes whose mouth does not lie
// within one flat face square to an axis, or that breaks out elsewhere, grazes
// a round face or meets another bore, save a pilot out of the middle of a
// pocket's floor.
package step
