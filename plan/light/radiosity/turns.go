package radiosity

import "math"

// turns gives out by how much of a whole decisions go on from one ray to the next, each time another: cloth, mirrors and glass
// that a ray meets one after the other decide by it, and would decide alike by the same.
type turns struct{ last int } // the prime of which the last is the root

// next is the square root of the next prime: they all differ and none is a share of others (the additive recurrence of
// R. D. Richtmyer, 1951).
func (t *turns) next() float64 {
	for t.last = max(t.last+1, 2); !isPrime(t.last); t.last++ {
	}
	return math.Sqrt(float64(t.last))
}

// The primes beyond which those of stretches begin and those of glass, so that a cloth more or less changes nothing there.
const (
	beforeStretches = 1009
	beforeGlass     = 2741
)

// nextBeyond is next, by a prime beyond a number.
func (t *turns) nextBeyond(number int) float64 {
	t.last = max(t.last, number)
	return t.next()
}

// moment is which ray decides, and between which mirrors. A ray that comes to the same cloth again by a mirror decides anew:
// as the roots of products of primes are no sums of shares of each other, the turns there know nothing of the first.
type moment struct {
	number  int     // of the ray
	stretch float64 // what turns are multiplied by: 1 before the first mirror, then the root of a prime of its own
}

// onFirst is the moment of a ray that has met no mirror.
func onFirst(number int) moment { return moment{number, 1} }

// newStretches are what turns are multiplied by, by the number of mirrors that a ray has met, up to so many.
func newStretches(t *turns, most int) []float64 {
	all := []float64{1}
	for range most {
		all = append(all, t.nextBeyond(beforeStretches))
	}
	return all
}

func isPrime(p int) bool {
	for d := 2; d*d <= p; d++ {
		if p%d == 0 {
			return false
		}
	}
	return true
}
