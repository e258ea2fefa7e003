// Package house holds the rules of the tree as tests: which package may import which, and
// what no file may hold. It has no code of its own.
package house
