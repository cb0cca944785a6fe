// Package check knows what may not meet in a resolved set: the parts of a leaf
// and its hardware, what is bored, driven and cut in them, and leaves, track and
// fascia wherever the leaves are slid to; and it holds the set to the rules of
// the trade that turn on more than one size: floor and reveals, bow, glazing,
// seasons, tolerances, what hangs.
//
// The rules that turn on a size as it is resolved are model/door's. A finding of
// what meets has a path in the model and no place in a file: who knows the file
// adds it.
package check
