// Package lettering knows the letters that drawings are written in: which
// characters the typeface has, how wide a line of text is on paper and how far
// it reaches above and below its base line.
//
// It does not know pages or file formats. Sizes are lengths on paper; the
// height of lettering is always that of a capital letter (ISO 3098 calls it h).
// All widths are computed in whole font units, so every machine agrees on them.
//
// The typeface is Routed Gothic, an open drafting letter under the SIL Open
// Font License 1.1 (OFL.txt, beside the font).
package lettering
