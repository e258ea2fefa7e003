package ink

import "gonum.org/v1/gonum/spatial/r2"

// Magnify makes the marks of a page larger from one on, about the corner of its paper, lettering with
// them, and all its links. Lines keep their widths, as a drawing office has it. None of the marks may have a clip.
func (p *Page) Magnify(first int, by float64) {
	for i := range p.Items[first:] {
		p.Items[first+i].magnify(by)
	}
	for i := range p.Links {
		l := &p.Links[i]
		l.Min, l.Max = r2.Scale(by, l.Min), r2.Scale(by, l.Max)
	}
}

func (it *Item) magnify(by float64) {
	path := make(Path, len(it.Path))
	for i, s := range it.Path {
		for j := range s.P {
			s.P[j] = r2.Scale(by, s.P[j])
		}
		path[i] = s
	}
	if it.Path != nil {
		it.Path = path
	}
	if it.Text != nil {
		t := *it.Text
		t.At, t.Size = r2.Scale(by, t.At), by*t.Size
		it.Text = &t
	}
	if it.Image != nil {
		m := *it.Image
		m.Min, m.Max = r2.Scale(by, m.Min), r2.Scale(by, m.Max)
		it.Image = &m
	}
}
