package change

import (
	"slices"
)

// Order is a day: its set-ups in the order in which they are shot, each as a state. Any order can be shot: that a set-up is written after
// another says what it is, not when.
type Order struct {
	States []*State

	known map[[2]int]Sum // by the places of two set-ups in States
}

// NewOrder is a day in the order that is given.
func NewOrder(states []*State) *Order { return &Order{States: states, known: map[[2]int]Sum{}} }

// Swap is two set-ups that change places in the order of a day, and the work of all changes then.
type Swap struct {
	First, Second int // their places in the order that is given, from 0
	Sum           Sum
}

// MostSwaps is how many swaps are named.
const MostSwaps = 2

// Sum is the work of all changes of a day. What is rigged for the first set-up and wrapped after the last is not in it.
func (o *Order) Sum() Sum { return o.along(o.given()) }

// given is the order that is given.
func (o *Order) given() []int {
	order := make([]int, len(o.States))
	for i := range order {
		order[i] = i
	}
	return order
}

// along is the work of an order.
func (o *Order) along(order []int) (s Sum) {
	for i := 1; i < len(order); i++ {
		s.Add(o.between(order[i-1], order[i]))
	}
	return s
}

// between is the work between two set-ups, worked out once.
func (o *Order) between(a, b int) Sum {
	s, known := o.known[[2]int{a, b}]
	if !known {
		s = Work(o.States[a], o.States[b])
		o.known[[2]int{a, b}] = s
	}
	return s
}

// Swaps are the exchanges of two set-ups that leave the least work, the best first; none where none saves any. Of some that save as much the
// one of earlier set-ups comes first.
func (o *Order) Swaps() (best []Swap) {
	given := o.Sum()
	for i := range o.States {
		for k := i + 1; k < len(o.States); k++ {
			order := o.given()
			order[i], order[k] = k, i
			if s := o.along(order); s.less(&given) {
				best = append(best, Swap{i, k, s})
			}
		}
	}
	slices.SortStableFunc(best, func(a, b Swap) int {
		switch {
		case a.Sum.less(&b.Sum):
			return -1
		case b.Sum.less(&a.Sum):
			return 1
		}
		return 0
	})
	return best[:min(len(best), MostSwaps)]
}
