package radiosity

import (
	"slices"
	"testing"
)

// at is the element that is seen in direction and point n.
func (q *itemBuffer) at(n int) uint32 {
	if q.long != nil {
		return q.seen[q.long[n]]
	}
	return q.seen[q.short[n]]
}

// An item buffer gives back what was recorded, however many elements are in it, and leaves the index as it was.
func TestItemBufferOfManyElements(t *testing.T) {
	for _, n := range []int{100, 1 << 16, 1<<16 + 1, 70_000} {
		p := &depthBuffer{index: elementIndex{make([]int32, 80_000), map[uint32]int32{}}}
		var q itemBuffer
		var recorded []uint32
		for from := 0; from < n; from += 10_000 {
			var hits []uint32
			for e := from; e < min(from+10_000, n); e++ {
				hits = append(hits, uint32(e), uint32(e/2), filteredBit|uint32(e%7))
			}
			p.record(&q, hits)
			recorded = append(recorded, hits...)
		}
		got := make([]uint32, len(recorded))
		for i := range got {
			got[i] = q.at(i)
		}
		if !slices.Equal(got, recorded) {
			t.Errorf("a picture of %d elements gives back others", n)
		}
		exitance := make([]columns32, 80_000)
		for e := range exitance {
			exitance[e][0] = float32(e)
		}
		for i, e := range q.seen {
			q.seen[i] = e &^ filteredBit
		}
		sums, _ := q.sum(nil, nil, len(recorded), 1, exitance)
		for i, e := range recorded {
			if sums[i][0] != float32(e&^filteredBit) {
				t.Fatalf("a picture of %d elements: point %d sums to %g, want %d", n, i, sums[i][0], e&^filteredBit)
			}
		}
		p.resetIndex(&q)
		if slices.ContainsFunc(p.index.places[8:], func(n int32) bool { return n != 0 }) || len(p.index.veils) != 0 {
			t.Errorf("after a buffer of %d elements the index remembers some", n)
		}
	}
}
