// Package layout knows the printed pages of a takeoff: shopping list and cut
// list, how every board, sheet and roll of film is cut, one glance a pattern,
// and the labels that go on the parts.
//
// It does not know how a layout is found, nor file formats. Boards are drawn
// to scale along their length; their width is not to scale, so that a label
// fits. Sheets and film are to scale.
package layout
