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
