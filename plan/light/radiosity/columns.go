package radiosity

// width is how many columns, of a lamp and a channel, are solved together: two lamps in colour, or
// six in grey.
const width = 6

// columns are the figures of one place for the lamps that are solved together.
type columns [width]float64

// columns32 is columns in single precision, which is enough to read from.
type columns32 [width]float32

// add adds b, written out: in a loop it takes twice the time.
func (s *columns32) add(b *columns32) {
	s[0] += b[0]
	s[1] += b[1]
	s[2] += b[2]
	s[3] += b[3]
	s[4] += b[4]
	s[5] += b[5]
}

// addTimes adds b by a weight, written out as add is.
func (s *columns32) addTimes(b *columns32, weight float32) {
	s[0] += weight * b[0]
	s[1] += weight * b[1]
	s[2] += weight * b[2]
	s[3] += weight * b[3]
	s[4] += weight * b[4]
	s[5] += weight * b[5]
}
