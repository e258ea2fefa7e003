// Package unit parses and prints lengths, angles, light levels and the trade's other written
// quantities. It is a leaf: text in, SI numbers out.
package unit

// Fault is a value that could not be read: what is wrong and, where one is likely, the fix.
type Fault struct {
	Message string // plain words, no full stop
	Hint    string // "did you mean 3 m?"; "" where no fix is likely
}

func (f *Fault) Error() string { return f.Message }
