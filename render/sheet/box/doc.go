// Package box is geometry on a sheet of paper: points and upright boxes, in mm on paper or m of the set.
package box
