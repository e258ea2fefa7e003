package radiosity

// itemBuffer is what the points of a set see, direction by direction.
type itemBuffer struct {
	points []int32   // with data, by their places in the view
	seen   []uint32  // elements, each once
	short  []uint16  // places in seen
	long   []uint32  // the same, where short is too short for them
	turned []heading // by point: the axis, where each has its own
	ways   []heading // by direction, then
}

// elementIndex numbers the elements of an item buffer while it is filled.
type elementIndex struct {
	places []int32          // by element, from 1
	veils  map[uint32]int32 // by element seen through clear sheets
}

// record adds what points see in one direction to an item buffer.
func (p *depthBuffer) record(q *itemBuffer, hits []uint32) {
	for _, h := range hits {
		n := p.index.place(q, h)
		switch {
		case q.long != nil:
			q.long = append(q.long, uint32(n))
		case n < 1<<16:
			q.short = append(q.short, uint16(n))
		default:
			q.long = make([]uint32, 0, cap(q.short)) // room for all
			for _, s := range q.short {
				q.long = append(q.long, uint32(s))
			}
			q.short, q.long = nil, append(q.long, uint32(n))
		}
	}
}

// place is the place of an element in an item buffer, a new one where it has none.
func (a *elementIndex) place(q *itemBuffer, element uint32) int {
	if element&filteredBit != 0 {
		n, known := a.veils[element]
		if !known {
			q.seen = append(q.seen, element)
			n = int32(len(q.seen))
			a.veils[element] = n
		}
		return int(n - 1)
	}
	if a.places[element] == 0 {
		q.seen = append(q.seen, element)
		a.places[element] = int32(len(q.seen))
	}
	return int(a.places[element] - 1)
}

// resetIndex makes the index ready for the next item buffer.
func (p *depthBuffer) resetIndex(q *itemBuffer) {
	for _, e := range q.seen {
		if e&filteredBit == 0 {
			p.index.places[e] = 0
		}
	}
	clear(p.index.veils)
}

// sum adds up what the points of an item buffer see, n of them in rays directions, of the exitance of all
// elements. sums and near are memory to use again.
func (q *itemBuffer) sum(sums, near []columns32, n, rays int, exitance []columns32) ([]columns32, []columns32) {
	sums, near = resized(sums, n), resized(near, len(q.seen))
	clear(sums)
	for i, e := range q.seen {
		near[i] = exitance[e]
	}
	switch {
	case q.long != nil && q.turned != nil:
		for k := range rays {
			addSeenByAxis(sums, q.long[k*n:(k+1)*n], near, q.turned, &q.ways[k])
		}
	case q.turned != nil:
		for k := range rays {
			addSeenByAxis(sums, q.short[k*n:(k+1)*n], near, q.turned, &q.ways[k])
		}
	case q.long != nil:
		addSeen(sums, q.long[:rays*n], near)
	default:
		addSeen(sums, q.short[:rays*n], near)
	}
	return sums, near
}

func resized(s []columns32, n int) []columns32 {
	if cap(s) < n {
		return make([]columns32, n, n+n/4) // the next may be a little larger
	}
	return s[:n]
}

// addSeen adds to each sum the elements that its point sees, direction by direction. Four of them are added at once: so what is added to is
// fetched and put back a quarter as often, and the order is the same.
func addSeen[number uint16 | uint32](sums []columns32, places []number, exitance []columns32) {
	n := len(sums)
	for ; len(places) >= 4*n && n > 0; places = places[4*n:] {
		first, second, third, fourth := places[:n], places[n:2*n], places[2*n:3*n], places[3*n:4*n]
		for i := range sums {
			s := sums[i]
			s.add(&exitance[first[i]])
			s.add(&exitance[second[i]])
			s.add(&exitance[third[i]])
			s.add(&exitance[fourth[i]])
			sums[i] = s
		}
	}
	for ; len(places) > 0; places = places[n:] {
		for i, h := range places[:n] {
			sums[i].add(&exitance[h])
		}
	}
}

// addSeenByAxis is pour by the axes of the points: what is seen along way counts by 1 + cos t.
func addSeenByAxis[number uint16 | uint32](sums []columns32, places []number, exitance []columns32, axes []heading, way *heading) {
	axes = axes[:len(places)]
	for i, h := range places {
		a := &axes[i]
		sums[i].addTimes(&exitance[h], 1+way.x*a.x+way.y*a.y+way.z*a.z)
	}
}
