package light

// smallCounter counts up to seven for each bit of a word: in binary, by place.
type smallCounter struct{ ones, twos, fours uint64 }

// add adds one where a bit is set.
func (c *smallCounter) add(bits uint64) {
	carry := c.ones & bits
	c.ones ^= bits
	c.fours ^= c.twos & carry
	c.twos ^= carry
}

// any says where the count is not nought.
func (c *smallCounter) any() uint64 { return c.ones | c.twos | c.fours }

// exactly says where the count is n.
func (c *smallCounter) exactly(n int) uint64 {
	same := ^uint64(0)
	for place, bits := range [...]uint64{c.ones, c.twos, c.fours} {
		if n>>place&1 == 0 {
			bits = ^bits
		}
		same &= bits
	}
	return same
}

// wideCounter counts up to 65,535 likewise.
type wideCounter [16]uint64

// add adds 2^place where a bit is set.
func (t *wideCounter) add(bits uint64, place int) {
	for ; bits != 0 && place < len(t); place++ {
		t[place], bits = t[place]^bits, t[place]&bits
	}
}

// addSeven adds seven words, step apart, in one go.
func (t *wideCounter) addSeven(words []uint64, step int) {
	a, b := full(words[0], words[step], words[2*step])
	c, d := full(words[3*step], words[4*step], words[5*step])
	e, f := full(a, c, words[6*step])
	g, h := full(b, d, f)
	t.add(e, 0)
	t.add(g, 1)
	t.add(h, 2)
}

// full adds three bits: their sum and what is carried.
func full(a, b, c uint64) (sum, carry uint64) {
	odd := a ^ b
	return odd ^ c, a&b | odd&c
}

// atMost says where the count is n or less.
func (t *wideCounter) atMost(n int) uint64 {
	less, same := uint64(0), ^uint64(0)
	for place := len(t) - 1; place >= 0; place-- {
		if n>>place&1 != 0 {
			less |= same &^ t[place]
			same &= t[place]
		} else {
			same &^= t[place]
		}
	}
	return less | same
}
