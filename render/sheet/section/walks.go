package section

import (
	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// walks are the walks of the set-up: how each keeps to the working stop, as a graph, and in text every place of it. A page of
// the map at the height of the faces, which a walk is a cut through, has them beside it.
func walks(in *Input, u Units) (all []*Section) {
	for i := range in.Walks {
		w := &in.Walks[i]
		s := &Section{Title: "Walk of " + w.Person + ", " + u.Length(w.Length), Rank: layout.Other, Figure: WalkFigure, Walk: w,
			Words: []string{walkWords(w)}, textTables: []Table{walkTable(w, u)}, Without: NonEmpty(without(w.Uncomputed()))}
		for k := range w.Courses {
			c := &w.Courses[k]
			s.textOnly = append(s.textOnly, w.SpanWords(c))
			s.Points = append(s.Points, sentences(w.OffWords(c))...)
		}
		all = append(all, s)
	}
	return all
}

// walkWords say what the graph shows.
func walkWords(w *meter.Walk) string {
	from := unit.FormatStop(w.Courses[0].Working)
	switch {
	case len(w.Courses) > 1:
		return "stops from each working stop, without the body"
	case w.Courses[0].Camera == "":
		return "stops from " + from + " at the key side, without the body"
	}
	return "stops from " + from + " toward " + w.Courses[0].Camera + ", without the body"
}

// walkTable is every place of a walk.
func walkTable(w *meter.Walk, u Units) Table {
	t := Table{Columns: []Column{{Head: "along", Align: ink.Right}}}
	for i := range w.Courses {
		head := plan.CameraWords(w.Courses[i].Camera)
		if head == "" {
			head = "key side"
		}
		t.Columns = append(t.Columns, Column{Head: head, Align: ink.Right}, Column{Head: "stop", Align: ink.Right}, Column{Head: "over", Align: ink.Right})
	}
	t.Columns = append(t.Columns, Column{Head: "key + fill : fill", Align: ink.Right}, Column{Flexible: true})
	for i := range w.Points {
		t.Entries = append(t.Entries, walkEntry(w, i, u))
	}
	return t
}

// walkEntry is one place of a walk.
func walkEntry(w *meter.Walk, point int, u Units) Entry {
	p := &w.Points[point]
	e := Entry{Cells: []string{u.Length(p.Along)}}
	for k := range w.Courses {
		r := w.Judged(k)[point]
		n := len(e.Cells)
		e.Cells = append(e.Cells, u.Lux(r.Lux), Stop(r.Stop), overTenths(r.Over))
		e.Struck = append(append(e.Struck, When(r.Struck(), n)...), When(r.StopsStruck(), n+1, n+2)...)
	}
	contrast, note := "–", ""
	switch {
	case p.Contrast == nil:
	case unit.EqualStops(p.Contrast.Stops):
		contrast = "equal"
	default:
		contrast = tenths(p.Contrast.Stops) + " stops"
	}
	if p.In != "" {
		note = "in " + p.In + ", not judged"
	}
	e.Struck = append(e.Struck, When(p.Left.Struck() || p.Right.Struck(), len(e.Cells))...)
	e.Cells = append(e.Cells, contrast, note)
	return e
}
