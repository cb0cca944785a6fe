// Package piece knows test pieces: made-up parts that between them have every
// joint, seat, edge and fitting a leaf may have, each with its volume worked
// out by formula. Tests of solids and of what is made of solids ask their laws
// of them; nothing else uses them.
//
// It does not know what a leaf is: pieces stand by themselves, in millimetres,
// in the project's frame. Their sizes are invented.
package piece
