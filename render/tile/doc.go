// Package tile knows how a drawing at full size comes onto paper smaller than
// it is: cut into pages that overlap, or as one long page of a roll, with what
// it takes to print them true and to put them together.
//
// It does not know what is drawn. It takes a finished sheet and gives finished
// sheets, every length on them as it is to come out on the paper. A printer
// that is not true is corrected for by the PDF writer, which stretches pages
// and all; a page here is therefore the paper's size divided by the correction.
//
// # A page
//
// Inside the printer's margin stand a strip at the left with a check bar along
// Y, a strip at the foot with one along X and the page's words, and the
// window, through which the page shows its part of the drawing. Windows of
// neighbours overlap. Two crosses in each overlap are on both pages. Rows are
// counted from the top, columns from the left.
//
// Lines, fills and arcs are cut at the window's edge; the dashes of a cut line
// stay where they are. A text is never cut: it stands on each page that holds
// it whole, or else, moved inwards, on the one that holds its anchor. The
// dimensions of the drawing become their lines and letters.
package tile
