package files

import "strings"

// lm63Reader reads one file from top to bottom.
type lm63Reader struct {
	*text
	out  *LM63
	more []string // lines of [MORE], still to be joined to the last keyword
	next int      // the offset of what is read next
	// Where the parts of the file stand, to be blamed.
	lumensAt, multiplierAt, ballastAt, secondAt, countsAt, dimensionsAt, verticalAt, horizontalAt, candelaAt part
}

// token is the next word of the stream of numbers, which commas, blanks and line ends part.
func (r *lm63Reader) token() (part, bool) {
	b := r.file.Text
	i := r.next
	for i < len(b) && (blank(b[i]) || b[i] == ',' || b[i] == '\r' || b[i] == '\n') {
		i++
	}
	start := i
	for i < len(b) && !(blank(b[i]) || b[i] == ',' || b[i] == '\r' || b[i] == '\n') {
		i++
	}
	r.next = i
	return part{start, i}, i > start
}

// value reads the next number, number i of n of its list, which is called what in faults.
func (r *lm63Reader) value(what string, i, n int) (float64, part, bool) {
	p, more := r.token()
	if !more {
		r.fault(r.end(), CodeCount, "the file was cut off, or it announces more angles than it has", "the file ends where %s belongs", numbered(what, i, n))
		return 0, p, false
	}
	word := string(r.raw(p))
	v, ok := number(word)
	if !ok {
		r.fault(p, CodeNumber, hintOfWord(word), "%s belongs here, not %s", numbered(what, i, n), quoted(r.words(p)))
	}
	return v, p, ok
}

// shiftedHint is the likely cause of a value that cannot be.
const shiftedHint = "a value before it may be missing, or there is one too many"

// fortranExponent writes the powers of ten of Fortran as those of everyone else.
var fortranExponent = strings.NewReplacer("D", "E", "d", "e")

// hintOfWord is a likely cause of a word among the numbers.
func hintOfWord(word string) string {
	_, power := number(fortranExponent.Replace(word))
	switch {
	case strings.HasPrefix(word, "["):
		return "keywords stand before the TILT= line"
	case power:
		return "write powers of ten with an E"
	case strings.Contains(strings.ToUpper(word), "NAN"), strings.Contains(strings.ToUpper(word), "INF"):
		return "the program that wrote the file failed to measure or compute this value"
	}
	return shiftedHint
}

// numbers reads n numbers.
func (r *lm63Reader) numbers(n int, what string) (list []float64, at part, ok bool) {
	at = part{r.next, r.next}
	for i := range n {
		v, p, ok := r.value(what, i, n)
		if !ok {
			return nil, at, false
		}
		if i == 0 {
			at = p
		}
		list = append(list, v)
	}
	return list, at, true
}

// count reads a whole number from least on, that the rest of the file has room for.
func (r *lm63Reader) count(what string, least int) (n int, at part, ok bool) {
	v, p, ok := r.value(what, 0, 1)
	if !ok {
		return 0, p, false
	}
	n, fine := whole(v, 1<<24)
	if !fine || n < least {
		r.fault(p, CodeValue, shiftedHint, "%s is a whole number from %d, not %s", what, least, quoted(r.words(p)))
		return 0, p, false
	}
	if room := (len(r.file.Text) - r.next + 1) / 2; n > room {
		r.fault(p, CodeCount, "the file was cut off, or the number is wrong", "%s is %d, and the rest of the file has room for %d values at most", what, n, room)
		return 0, p, false
	}
	return n, p, true
}

// nth is the place of the i-th number of a list.
func (r *lm63Reader) nth(at part, i int) part {
	resume := r.next
	defer func() { r.next = resume }()
	r.next = at.start
	for range i {
		r.token()
	}
	p, _ := r.token()
	return p
}

func digit(b byte) bool { return '0' <= b && b <= '9' }
