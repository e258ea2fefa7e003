package day

import (
	"math"
	"slices"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/supply"
)

// The lengths of cable are reckoned in these steps, m, and a run of more pieces than mostPieces is one of the longest alone.
const (
	cableGrain = 0.1
	mostPieces = 12
)

// cable counts the cable from outlets to lights, a run each; of circuits that say no outlet nobody knows any.
func (n *needs) cable() {
	all := supply.Of(n.setup)
	for i := range all.Loads {
		load := &all.Loads[i]
		for _, d := range load.Draws {
			if d.Run == nil {
				continue
			}
			pieces := n.pieces(d.Run.Length, d.Run.Section, load.Circuit.Breaker)
			if pieces == nil {
				n.add(Item{Shelf: Cable, Label: "cable of " + n.length(math.Ceil(d.Run.Length))}, d.Light.Count, d.Light.Tag)
			}
			for _, p := range pieces {
				n.add(stocked(Cable, p), d.Light.Count, d.Light.Tag)
			}
		}
	}
}

// pieces are the cables of one section and one kind of plug that make a run: the fewest, and of as few those with the least over. Nil
// where no cable carries the current.
func (n *needs) pieces(length, section, amps float64) (best []*kit.Item) {
	byPlug := map[string][]*kit.Item{}
	var plugs []string
	for _, item := range n.kit.Items {
		if section > 0 && item.Section == section && item.Amps >= amps && item.Length > 0 {
			if !slices.Contains(plugs, item.Plug) {
				plugs = append(plugs, item.Plug)
			}
			byPlug[item.Plug] = append(byPlug[item.Plug], item)
		}
	}
	for _, plug := range plugs {
		p := Pieces(byPlug[plug], length)
		if best == nil || len(p) < len(best) || len(p) == len(best) && total(p) < total(best) {
			best = p
		}
	}
	return best
}

func total(pieces []*kit.Item) (sum float64) {
	for _, p := range pieces {
		sum += p.Length
	}
	return sum
}

// Pieces are the fewest cables that reach a length, m, and of as few those with the least over, the longest first.
func Pieces(cables []*kit.Item, length float64) []*kit.Item {
	longest := slices.MaxFunc(cables, func(a, b *kit.Item) int { return steps(a.Length) - steps(b.Length) })
	want := max(1, int(math.Ceil(length/cableGrain-1e-6)))
	count := (want + steps(longest.Length) - 1) / steps(longest.Length)
	if count > mostPieces {
		return slices.Repeat([]*kit.Item{longest}, count)
	}
	// last is by which cable a sum is reached with so many pieces; a sum is never more than is needed with the longest.
	last := make([]map[int]*kit.Item, count+1)
	last[0] = map[int]*kit.Item{0: nil}
	for k := 1; k <= count; k++ {
		last[k] = map[int]*kit.Item{}
		for sum := range last[k-1] {
			for _, c := range cables {
				if to := sum + steps(c.Length); last[k][to] == nil || steps(last[k][to].Length) < steps(c.Length) {
					last[k][to] = c
				}
			}
		}
	}
	best := count * steps(longest.Length)
	for sum := range last[count] {
		if sum >= want && sum < best {
			best = sum
		}
	}
	var found []*kit.Item
	for k, sum := count, best; k > 0; k-- {
		c := last[k][sum]
		found, sum = append(found, c), sum-steps(c.Length)
	}
	slices.SortStableFunc(found, func(a, b *kit.Item) int { return steps(b.Length) - steps(a.Length) })
	return found
}

// steps are those that a cable is long for sure.
func steps(length float64) int { return max(1, int(math.Floor(length/cableGrain+1e-6))) }
