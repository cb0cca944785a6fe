// Package takeoff knows what a set of doors takes: its cut list, the boards,
// sheets and film it is cut from and how they are cut, and the shopping list
// with quantities, prices and mass. Several sets pool into one stock.
//
// It does not know paper or file formats. Everything is counted from the
// resolved sets: a part is what package door made of it, an operation is a cut
// or a bore of its solid. The layouts are package cutting's; this package
// says what goes into them and what comes of them.
//
// # From board to part
//
// A board is bought by its nominal size, dressed to the size PS 20 gives,
// crosscut to rough length (net length + allowance), planed, ripped to width,
// and trimmed to net length. Parts come from the narrowest board to be had that
// gives their width. Where several equal parts fit side by side in a board's
// width, they are crosscut as one block and ripped from it. Where the model
// names no board, each width has boards of its own: net size plus what is
// planed and ripped off.
//
// # Rounding
//
// Packs are rounded up to whole ones. Money is whole numbers of the smallest
// coin. Areas, volumes and masses are float64 in m², L and kg, and only
// written rounded.
package takeoff
