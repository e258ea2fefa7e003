package radiosity

import "gonum.org/v1/gonum/spatial/r3"

// The points of a lattice may each have an axis of its own, toward one place. The rays of a direction are drawn
// together all the same: they are spread evenly over all directions, and each counts at each point by that
// point's axis. The weights lie between 0 and 2. Directions come in opposite pairs, so that the weights of
// each set are 1 in the mean to the last bits, whatever the axis. Where neighbours lend each other what they see,
// what is lent was weighed by the lender's axis: that shows within a hand's breadth of the place alone.

// heading is a direction in single precision, or nought where there is no direction.
type heading struct{ x, y, z float32 }

func headingOf(v r3.Vec) heading { return heading{float32(v.X), float32(v.Y), float32(v.Z)} }
