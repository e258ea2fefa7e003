// Package section is what a sheet says of a set-up, as data: lists, readings, notes and keys, in the set-up's units. The
// same sections are printed as text and set as blocks of the collar.
package section
