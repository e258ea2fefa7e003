// Package plane is the geometry of a floor plan: rings and their areas, clips, convex pieces, lines, bearings. It
// knows nothing of scenes. Lengths are metres, x to the right of the sheet and y up it; a ring is a list of corners
// whose last is joined to its first, and runs counter-clockwise unless said otherwise.
package plane
