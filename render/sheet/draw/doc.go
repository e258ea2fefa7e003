// Package draw turns data and a layout into ink: the plan or a wall with its maps and labels, and the collar round it.
//
// A Drawing is one sheet in the making. What draws a part of it (things, beams, readings, maps, names) has the drawing
// inside, and plan.go and elevation.go say in which order they draw.
package draw
