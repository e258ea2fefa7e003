package day

import (
	"math"
	"strings"

	"scrimshaw/plan"
)

// The rolls of the catalogue.
const (
	gelRoll       = "gel-roll"
	diffusionRoll = "diffusion-roll"
)

// How gel and cloth are cut: common practice.
const (
	sheetMargin = 0.1  // of gel or cloth beyond what it covers, on each side, m
	cutGrain    = 0.01 // m, to which pieces are cut, and never smaller
)

// sheets count the gel and the cloth before a head.
func (n *needs) sheets(l *plan.Light) {
	wide, high := faceOf(l)
	for i, names := range [][]string{l.Gels, l.Diffusion} {
		for _, name := range names {
			if l.Head.AllRound() || wide == 0 {
				n.add(Item{Shelf: Sheet, Label: name + ", round " + l.Head.UnitLabel}, l.Count, l.Tag)
				continue
			}
			n.sheet([...]string{gelRoll, diffusionRoll}[i], name, [2]float64{wide + 2*sheetMargin, high + 2*sheetMargin}, l.Count, l.Tag)
		}
	}
}

// faceOf is the width and the height of what light leaves a head by, m; 0 where nothing says it.
func faceOf(l *plan.Light) (wide, high float64) {
	o := l.Head.Source.Opening
	wide = math.Max(o.Width, l.Head.Aperture)
	if high = o.Height; high == 0 {
		high = wide
	}
	return wide, high
}

// sheet counts a piece of gel or cloth off a roll.
func (n *needs) sheet(roll, name string, size [2]float64, count int, tag string) {
	for i := range size {
		size[i] = math.Ceil(size[i]/cutGrain-1e-6) * cutGrain
	}
	item := Item{Shelf: Sheet, Name: name, Label: name + ", piece of " + n.size(size[0], size[1]), Piece: size}
	if from := n.kit.ItemOf(roll); from != nil {
		item.Roll, item.From = from.Size[0], from
	}
	n.add(item, count, tag)
}

// Cut is the length of roll, m, that all pieces of a sheet take, and the share of it that is waste: side by side as far as the roll is wide, the
// way round that takes less; a piece that is wider than the roll is joined of strips. Not ok where roll or piece is not known.
func (i *Item) Cut() (length, waste float64, ok bool) {
	if i.Roll == 0 || i.Area() == 0 {
		return 0, 0, false
	}
	length = math.Min(along(i.Piece[0], i.Piece[1], i.Roll, i.Count), along(i.Piece[1], i.Piece[0], i.Roll, i.Count))
	return length, 1 - i.Area()*float64(i.Count)/(length*i.Roll), true
}

// along is the length of roll for some pieces that lie across it with one side, m.
func along(across, other, roll float64, count int) float64 {
	if beside := math.Floor(roll/across + 1e-9); beside >= 1 {
		return other * math.Ceil(float64(count)/beside)
	}
	return other * math.Ceil(across/roll-1e-9) * float64(count)
}

// joinNote puts a note behind others, each once.
func joinNote(notes, more string) string {
	switch {
	case notes == "" || more == "":
		return notes + more
	case strings.Contains(notes, more):
		return notes
	}
	return notes + "; " + more
}
