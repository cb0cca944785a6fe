// Package cutting knows how to lay parts out on what is bought: lengths on
// boards (1-D), rectangles on sheets (2-D, guillotine cuts only) and faces on
// a roll of film.
//
// Each engine is a pair. LayOutBoards, LayOutSheets and LayOutFilm find a
// layout; CheckBoards, CheckSheets and CheckFilm replay a finished layout
// without looking at how it was found.
//
// # Kerf
//
// A saw cut turns one kerf into dust. n parts on one board need n−1 cuts
// between them, and one more cut frees the offcut. That last cut is free when
// nothing is left to free: a part may end exactly at the board's end, and a
// rest narrower than the kerf goes into the dust whole. In arithmetic: parts p
// fit a clear length L exactly when Σ(p + kerf) ≤ L + kerf. The same holds in
// each direction of a sheet.
//
// # What "best" means
//
// Least cost; then fewest boards or sheets; then fewest different patterns;
// then one long offcut kept rather than several short ones. Cost is the price;
// where nothing is priced it is the length (boards) or area (sheets) bought.
// The lower bound printed with a layout holds for the cost, and it is proven in
// whole numbers: floating point only proposes the shadow prices it rests on.
//
// # Repeatability
//
// The effort is counted in search steps, never in seconds, and products are
// rounded before they are summed, so that every machine finds the same layout.
//
// The package does not know doors, drawings or files.
package cutting
