package ink

import (
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Stratum is what a page has on one layer.
type Stratum struct {
	Layer  Layer
	Groups []Group
}

// Group is the marks in a row that stand for one thing, with the sentence that says it. Both are
// "" for marks that stand for nothing in particular.
type Group struct {
	Object, Alt string
	Items       []Item
}

// Strata is a page made ready for writing, and the one place where a drawing is tidied, so that
// all formats show the same: layers in drawing order, each with its marks in the order they were
// drawn; places rounded to 0.01 mm; lettering clean (see Clean); clips and dashes in order. Marks
// that show nothing, lie at places that are no number or further off than a kilometre, or are broader
// than a metre are left out. The page itself stays as it is.
func (p *Page) Strata() []Stratum {
	p = p.Unfolded()
	var strata []Stratum
	for _, l := range p.byLayer() {
		it := p.Items[l]
		if !p.tidy(&it) {
			continue
		}
		if n := len(strata); n == 0 || strata[n-1].Layer != it.Layer {
			strata = append(strata, Stratum{Layer: it.Layer})
		}
		strata[len(strata)-1].add(it)
	}
	return strata
}

// byLayer returns the indices of the items in drawing order.
func (p *Page) byLayer() []int {
	order := make([]int, len(p.Items))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(p.Items[a].Layer) - int(p.Items[b].Layer) })
	return order
}

// add puts an item into the last group, or starts one where it stands for another thing or has
// something to say.
func (s *Stratum) add(it Item) {
	n := len(s.Groups)
	if n == 0 || s.Groups[n-1].Object != it.Object || it.Alt != "" || it.Object == "" && s.Groups[n-1].Alt != "" {
		s.Groups = append(s.Groups, Group{Object: it.Object, Alt: it.Alt})
		n++
	}
	g := &s.Groups[n-1]
	g.Items = append(g.Items, it)
}

// tidy makes an item ready, and says whether there is anything to draw.
func (p *Page) tidy(it *Item) bool {
	it.Object, it.Alt = Clean(it.Object), Clean(it.Alt)
	if it.Clip < 0 || it.Clip > len(p.Clips) {
		it.Clip = 0
	}
	if it.Clip > 0 && !sane(p.Clips[it.Clip-1]...) {
		return false
	}
	switch {
	case it.Text != nil:
		it.Path, it.Image = nil, nil
		return it.tidyText()
	case it.Image != nil:
		it.Path = nil
		return it.tidyImage()
	}
	return it.tidyPath()
}

func (it *Item) tidyPath() bool {
	if s := it.Stroke; s != nil && !(s.Width > 0 && s.Width <= broad) {
		it.Stroke = nil
	}
	if len(it.Path) == 0 || it.Path[0].Op == Close || it.Stroke == nil && it.Fill == nil {
		return false
	}
	if s := it.Stroke; s != nil {
		tidied := *s
		tidied.Dash = dashes(s.Dash)
		it.Stroke = &tidied
	}
	path := make(Path, len(it.Path))
	for i, s := range it.Path {
		n := s.points()
		if !sane(s.P[:n]...) {
			return false
		}
		for j := range n {
			path[i].P[j] = round(s.P[j])
		}
		path[i].Op = s.Op
	}
	if path[0].Op != Move {
		path[0] = Segment{Op: Move, P: [3]r2.Vec{path[0].P[0]}}
	}
	it.Path = path
	return true
}

func (it *Item) tidyText() bool {
	t := *it.Text
	t.S, t.At = Clean(t.S), round(t.At)
	it.Text = &t
	return t.S != "" && t.Size > 0 && t.Size <= broad && sane(t.At) && sane(r2.Vec{X: t.Angle})
}

func (it *Item) tidyImage() bool {
	m := *it.Image
	box := Corners(round(m.Min), round(m.Max))
	m.Min, m.Max = box[0], box[2]
	it.Image = &m
	return sane(m.Min, m.Max) && m.Min.X < m.Max.X && m.Min.Y < m.Max.Y &&
		m.Width > 0 && m.Height > 0 && len(m.RGB) == 3*m.Width*m.Height
}

// dashes returns a pattern that all formats take alike, nil for a line without gaps.
func dashes(d []float64) []float64 {
	sum := 0.0
	for _, x := range d {
		if !(x >= 0 && x < far) {
			return nil
		}
		sum += x
	}
	if sum <= 0 {
		return nil
	}
	return d
}

// far is further than any paper reaches, broad the broadest line and the largest letter, mm.
const (
	far   = 1e6
	broad = 1000
)

// sane says whether places are numbers on a paper.
func sane(points ...r2.Vec) bool {
	for _, p := range points {
		if !(math.Abs(p.X) < far && math.Abs(p.Y) < far) {
			return false
		}
	}
	return true
}

// Marks ranges over all marks of strata in drawing order.
func Marks(strata []Stratum) iter.Seq[*Item] {
	return func(yield func(*Item) bool) {
		for _, s := range strata {
			for _, g := range s.Groups {
				for i := range g.Items {
					if !yield(&g.Items[i]) {
						return
					}
				}
			}
		}
	}
}
