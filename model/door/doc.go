// Package door knows the trade's rules: it turns a model as written into a set
// of leaves made of solids, with every size resolved and explained.
//
// It does not know YAML or paper. The frame is X to the right, Z up, Y from
// the room into the closet. A set's origin is at the opening's front face, at
// the left of the least usable width, at the highest point of the floor; a
// leaf's own origin is its lower left front corner.
//
// The words, one for each thing:
//
//   - opening: the finished hole the doors fill, as measured; head, jambs, floor
//   - set: all the leaves of one opening with their track and trim
//   - leaf: one moving door; stile, rail: its vertical and horizontal members
//   - muntin: a vertical bar between lites inside one leaf
//   - lite: one framed hole; its sight size is what one sees through
//   - panel: the sheet that fills a lite
//   - rabbet: the step milled into the back of the frame that the panel lies
//     in; its shoulder faces the back, its wall faces the panel's edge
//   - groove: holds the panel captive all round; put in before assembly
//   - face bead: a mitred strip in a rabbet that opens to the front
//   - stop: a mitred strip that holds the panel from the back
//   - bed: sealant between shoulder and panel
//   - bite: how far the panel lies on the shoulder; edge gap: panel edge to wall
//   - edge washer: a washer on a screw driven sideways into the rabbet wall
//   - corner relief: what is done about the round corner a cutter leaves
//   - overlap: how far neighbouring leaves on different tracks cover one another
//   - meeting gap: between neighbouring leaves on one track
//   - face gap: back of a front leaf to front of the one behind it
//   - floor gap, head drop: leaf bottom to floor, opening head to leaf top
//   - reveal: what is left visible and even, leaf edge to jamb
//   - fascia: the trim that hides the track
//   - tenon, mortise: the tongue on a member's end and the hole it goes into; a
//     loose tenon is a piece of its own in mortises of both; the member's
//     shoulders bear on the other part, a cheek is what stands beside a mortise
//   - haunch: a short step of the tenon beside it, at a corner of the leaf
//   - half-lap: each part keeps half the thickness where they cross
//   - bridle: an open mortise and tenon; at a cross rail a fork over a web
//   - plug: what fills a pocket hole
//
// A stile's or rail's width is measured across its face, thickness front to
// back.
package door
