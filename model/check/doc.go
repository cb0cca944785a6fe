// Package check knows what may not meet in a resolved set: the parts of a leaf
// and its hardware, what is bored, driven and cut in them, and leaves, track and
// fascia wherever the leaves are slid to.
//
// The rules of the trade are model/door's; what is checked here is the result,
// whatever rules it came from. A finding has a path in the model and no place in
// a file: who knows the file adds it.
package check
