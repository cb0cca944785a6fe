// Package tolerance knows by how much each clearance of a set may come out
// other than drawn: what contributes, the worst case in which all of it falls on
// one side, and the root of the sum of squares, which as good as all doors keep.
//
// What a part may differ by is taken from published classes where there are any:
// pieces cut against a stop are of class m of ISO 2768-1, leaves of the
// Architectural Woodwork Standards. The rest are defaults of ours, each with its
// reason.
package tolerance
