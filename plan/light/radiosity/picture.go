package radiosity

// picture is what the points of a set see, direction by direction.
type picture struct {
	points []int32   // with data, by their places in the view
	seen   []uint32  // elements, each once
	short  []uint16  // places in seen
	long   []uint32  // the same, where short is too short for them
	turned []heading // by point: the axis, where each has its own
	ways   []heading // by direction, then
}

// at is the element that is seen in direction and point n.
func (q *picture) at(n int) uint32 {
	if q.long != nil {
		return q.seen[q.long[n]]
	}
	return q.seen[q.short[n]]
}

// album numbers the elements of a picture while it is taken.
type album struct {
	places []int32          // by element, from 1
	veils  map[uint32]int32 // by element seen through clear sheets
}

// file adds what points see in one direction to a picture.
func (p *painter) file(q *picture, hits []uint32) {
	for _, h := range hits {
		n := p.album.place(q, h)
		switch {
		case q.long != nil:
			q.long = append(q.long, uint32(n))
		case n < 1<<16:
			q.short = append(q.short, uint16(n))
		default:
			q.long = make([]uint32, 0, 2*len(q.short))
			for _, s := range q.short {
				q.long = append(q.long, uint32(s))
			}
			q.short, q.long = nil, append(q.long, uint32(n))
		}
	}
}

// place is the place of an element in a picture, a new one where it has none.
func (a *album) place(q *picture, element uint32) int {
	if element&veil != 0 {
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

// forget makes the album ready for the next picture.
func (p *painter) forget(q *picture) {
	for _, e := range q.seen {
		if e&veil == 0 {
			p.album.places[e] = 0
		}
	}
	clear(p.album.veils)
}

// sum adds up what the points of a picture see, n of them in rays directions, of the exitance of all
// elements. sums and near are memory to use again.
func (q *picture) sum(sums, near []shining, n, rays int, exitance []shining) ([]shining, []shining) {
	sums, near = sized(sums, n), sized(near, len(q.seen))
	clear(sums)
	for i, e := range q.seen {
		near[i] = exitance[e]
	}
	for k := range rays {
		switch {
		case q.long != nil && q.turned != nil:
			weigh(sums, q.long[k*n:(k+1)*n], near, q.turned, &q.ways[k])
		case q.long != nil:
			pour(sums, q.long[k*n:(k+1)*n], near)
		case q.turned != nil:
			weigh(sums, q.short[k*n:(k+1)*n], near, q.turned, &q.ways[k])
		default:
			pour(sums, q.short[k*n:(k+1)*n], near)
		}
	}
	return sums, near
}

func sized(s []shining, n int) []shining {
	if cap(s) < n {
		return make([]shining, n, n+n/4) // the next may be a little larger
	}
	return s[:n]
}

// pour adds to each sum the element that its point sees.
func pour[number uint16 | uint32](sums []shining, places []number, exitance []shining) {
	for i, h := range places {
		sums[i].add(&exitance[h])
	}
}

// weigh is pour by the axes of the points: what is seen along way counts by 1 + cos t.
func weigh[number uint16 | uint32](sums []shining, places []number, exitance []shining, axes []heading, way *heading) {
	axes = axes[:len(places)]
	for i, h := range places {
		a := &axes[i]
		sums[i].addTimes(&exitance[h], 1+way.x*a.x+way.y*a.y+way.z*a.z)
	}
}
