package light

import (
	"slices"
	"testing"
)

// Panes are drawn for a band of rows where some of its points see part of the lamp and part of what they see of it through the pane: not of another
// band, nor where all of it is seen through the pane, or none.
func TestPanesThatABandIsDrawnFor(t *testing.T) {
	const words, bands = 2, 3
	size := bands * band * words
	f := &field{g: &grid{words: words}}
	for range 4 {
		f.panes = append(f.panes, pane{some: make([]uint64, size), all: make([]uint64, size)})
	}
	at := func(band0, row, word int) int { return (band0*band+row)*words + word }
	f.panes[0].some[at(1, band-1, 1)] = 4
	f.panes[1].some[at(1, 0, 0)], f.panes[1].all[at(1, 0, 0)] = 6, 6
	f.panes[2].some[at(2, 1, 0)], f.panes[2].all[at(2, 1, 0)] = 6, 2
	f.panes[3].some[at(0, 0, 0)], f.panes[3].some[at(2, 0, 1)] = 8, 1
	for _, c := range []struct {
		band   int
		partly uint64 // of each word
		want   []int
	}{{0, ^uint64(0), []int{3}}, {1, ^uint64(0), []int{0}}, {2, ^uint64(0), []int{2, 3}}, {2, 2, nil}, {2, 4, []int{2}}, {1, 3, nil}, {1, 4, []int{0}}} {
		d := &bandSummer{f: f, partly: slices.Repeat([]uint64{c.partly}, band*words)}
		d.findMixedPanes(c.band*band, (c.band+1)*band)
		if !slices.Equal(d.mixedPanes, c.want) {
			t.Errorf("band %d, points %b: panes %v are drawn, want %v", c.band, c.partly, d.mixedPanes, c.want)
		}
	}
}
