package plane

// near is the distance in nanometres within which points, and a point and an
// edge, are taken for one.
//
// The centre and ends of an arc are whole nanometres. A point rounded onto it
// lies up to √½ nm off, and so do the ends its radius is taken from: together
// 1.41 nm. A point rounded onto a slanted segment lies √½ nm off, and the
// segment's own ends may each have been rounded so. Two such points for one
// crossing are thus up to 1.41 nm apart; 2 nm is the next whole number. The
// smallest thing anybody cuts is some 10 000 times larger.
const near = 2

// askew is how far, in nanometres, the two ends of an arc may differ in their
// distance from its centre: a rounded end that was then moved onto another
// point within near of it.
const askew = 2 * near

// touching is how close, in nanometres, two edges of one outline may come
// before Simple takes them to meet. It is less than near by the 1.41 nm for
// which an arc's radius and point may be off, so that what the booleans saw
// apart is never taken to meet.
const touching = 0.5
