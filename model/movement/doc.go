// Package movement knows what a set's sizes and clearances become in the driest
// and the most humid air of the year: wood across its grain, sheets by heat and
// moisture.
//
// Along the grain wood counts as still. So stiles carry a leaf's height and
// rails its inner width; stiles make the leaf wider by what they grow, and a
// corner rail stands out of the stiles' ends by at most what it grows. A board's
// width moves by the coefficient of how it is sawn, its thickness by the other
// one. The opening counts as still.
package movement
