package solid

// BVH answers ray queries over a Set: a bounding volume hierarchy over whole prisms and sheets,
// split by the surface area heuristic. The same Set always gives the same tree. Queries allocate
// nothing and may run at once; the Set must not change while it is used.
type BVH struct {
	nodes   []node
	parts   []part // in the order of the leaves
	epsilon float64
}

// node is a leaf over parts[first : first+count] where count > 0; else its left child is the
// next node and its right child is nodes[first].
type node struct {
	bounds box
	first  int32
	count  int32
	axis   int8 // that the children were split on: the left one lies at lesser coordinates
}

// The build's constants. A box costs about half a prism. Below deepest the tree is split in
// halves, which bounds the stack of a query.
const (
	bins    = 12
	maxLeaf = 4
	boxCost = 0.5
	deepest = 32
	stack   = 64 // deepest + log2 of the most parts there can be
)

// NewBVH prepares a Set for queries. Solids without volume, sheets without area and those with
// corners that are not finite numbers stop no light and are left out.
func NewBVH(set *Set) *BVH {
	b := &BVH{}
	for i := range set.Prisms {
		if p, ok := newPrism(&set.Prisms[i], i); ok {
			b.parts = append(b.parts, p)
		}
	}
	for i := range set.Sheets {
		if p, ok := newSheet(&set.Sheets[i], len(set.Prisms)+i); ok {
			b.parts = append(b.parts, p)
		}
	}
	all := emptyBox()
	for i := range b.parts {
		all.join(b.parts[i].bounds)
	}
	b.epsilon = 1e-9 * max(1, all.extent())
	for i := range b.parts {
		b.parts[i].bounds.grow(2 * b.epsilon)
	}
	if len(b.parts) > 0 {
		b.split(0, len(b.parts), 0)
	}
	return b
}

// Epsilon is the distance, m, below which two places are the same to this set.
func (b *BVH) Epsilon() float64 { return b.epsilon }

// split builds the subtree over parts[from:to] and returns its root.
func (b *BVH) split(from, to, depth int) int32 {
	here := int32(len(b.nodes))
	bounds := emptyBox()
	for i := from; i < to; i++ {
		bounds.join(b.parts[i].bounds)
	}
	b.nodes = append(b.nodes, node{bounds: bounds, first: int32(from), count: int32(to - from)})
	middle, axis, ok := b.partition(from, to, depth, &bounds)
	if !ok {
		return here
	}
	b.split(from, middle, depth+1)
	right := b.split(middle, to, depth+1)
	n := &b.nodes[here]
	n.first, n.count, n.axis = right, 0, int8(axis)
	return here
}

// partition orders parts[from:to] into two groups; not ok where a leaf is cheaper.
func (b *BVH) partition(from, to, depth int, bounds *box) (middle, axis int, ok bool) {
	n := to - from
	if n == 1 {
		return 0, 0, false
	}
	if depth < deepest {
		best := b.cheapest(from, to)
		leaf := float64(n) * bounds.area()
		if best.bin > 0 && (n > maxLeaf || best.cost+boxCost*bounds.area() < leaf) {
			return b.divide(from, to, &best), best.axis, true
		}
	}
	if n <= maxLeaf {
		return 0, 0, false
	}
	return from + n/2, 0, true
}

// cut is a way to divide parts: those whose centre falls in a bin below bin go left.
type cut struct {
	axis, bin int
	cost      float64
	lo, scale float64 // of the bins
}

// of is the bin of a part.
func (c *cut) of(p *part) int {
	return min(int((p.bounds.centre2(c.axis)-c.lo)*c.scale), bins-1)
}

// cheapest returns the cut with the least expected cost; bin 0 where all centres agree.
func (b *BVH) cheapest(from, to int) (best cut) {
	for axis := range 3 {
		lo, hi := b.parts[from].bounds.centre2(axis), b.parts[from].bounds.centre2(axis)
		for i := from + 1; i < to; i++ {
			c := b.parts[i].bounds.centre2(axis)
			lo, hi = min(lo, c), max(hi, c)
		}
		if !(hi > lo) {
			continue
		}
		c := cut{axis: axis, lo: lo, scale: bins / (hi - lo)}
		if c.sweep(b.parts[from:to]); c.bin > 0 && (best.bin == 0 || c.cost < best.cost) {
			best = c
		}
	}
	return best
}

// sweep sets the bin and cost of the best cut on the axis.
func (c *cut) sweep(parts []part) {
	var count [bins]int
	var bounds [bins]box
	for k := range bounds {
		bounds[k] = emptyBox()
	}
	for i := range parts {
		k := c.of(&parts[i])
		count[k]++
		bounds[k].join(parts[i].bounds)
	}
	right := costsFrom(&count, &bounds)
	sum, n := emptyBox(), 0
	for k := 1; k < bins; k++ {
		sum.join(bounds[k-1])
		n += count[k-1]
		if n == 0 || n == len(parts) {
			continue
		}
		if cost := float64(n)*sum.area() + right[k]; c.bin == 0 || cost < c.cost {
			c.bin, c.cost = k, cost
		}
	}
}

// costsFrom is, by bin, the cost of all that lies in it and in those after it.
func costsFrom(count *[bins]int, bounds *[bins]box) (costs [bins]float64) {
	sum, n := emptyBox(), 0
	for k := bins - 1; k > 0; k-- {
		sum.join(bounds[k])
		n += count[k]
		costs[k] = float64(n) * sum.area()
	}
	return costs
}

// divide moves the left parts before the right ones, each in the order of the set.
func (b *BVH) divide(from, to int, c *cut) (middle int) {
	var right []part
	middle = from
	for i := from; i < to; i++ {
		if c.of(&b.parts[i]) < c.bin {
			b.parts[middle] = b.parts[i]
			middle++
		} else {
			right = append(right, b.parts[i])
		}
	}
	copy(b.parts[middle:to], right)
	return middle
}

// walk goes through the leaves that a ray meets, the nearer child first.
type walk struct {
	b    *BVH
	leaf int32 // the first part of the last leaf
	top  int
	todo [stack]int32
}

func (b *BVH) walk() walk {
	w := walk{b: b}
	if len(b.nodes) > 0 {
		w.top = 1 // the root, node 0
	}
	return w
}

// next returns the parts of the next leaf that the ray meets before far, nil after the last.
func (w *walk) next(r *ray, far float64) []part {
	for w.top > 0 {
		w.top--
		at := w.todo[w.top&(stack-1)]
		n := &w.b.nodes[at]
		switch {
		case !r.meets(&n.bounds, far):
		case n.count > 0:
			w.leaf = n.first
			return w.b.parts[n.first : n.first+n.count]
		case r.inv[n.axis] < 0:
			w.push(at+1, n.first)
		default:
			w.push(n.first, at+1)
		}
	}
	return nil
}

func (w *walk) push(later, sooner int32) {
	w.todo[w.top], w.todo[w.top+1] = later, sooner
	w.top += 2
}
