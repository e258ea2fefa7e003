package sheet

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/samples"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// marksOf are the filled or stroked shapes of an object on a layer.
func marksOf(p *ink.Page, object string, layer ink.Layer) (all []*ink.Item) {
	for i := range p.Items {
		if it := &p.Items[i]; it.Object == object && it.Layer == layer && it.Text == nil {
			all = append(all, it)
		}
	}
	return all
}

// TestFacesAreMarkedOnTheHead: only meters of the scene stand as meters on the plan; the sides of a
// face are strokes at the edge of the head.
func TestFacesAreMarkedOnTheHead(t *testing.T) {
	in := fixture.Example()
	s := sheetFor(t, in, Options{Paper: "A3", Font: fixture.Family(t)})
	v := s.fitter.View(&s.layout)
	head := v.Paper(in.Setup.People[0].At)
	for _, name := range []string{"reading:ruth.key", "reading:ruth.fill"} {
		marks := marksOf(&s.pages[0], name, ink.Readings)
		if len(marks) == 0 {
			t.Fatalf("%s has no mark", name)
		}
		if marks[0].Fill != nil {
			t.Errorf("%s is filled, as a meter is", name)
		}
		b := marks[0].Bounds(nil).Box
		if far := r2.Norm(r2.Sub(box.Middle(b.Min, b.Max), head)); far > math.Max(0.09*v.Scale, 0.9)+2.5 {
			t.Errorf("%s stands %.1f mm off the head", name, far)
		}
	}
	if meters := marksOf(&s.pages[0], "reading:table-top", ink.Readings); len(meters) == 0 || meters[0].Fill == nil {
		t.Error("the meter has lost its mark")
	}
}

// TestNamesStandAtTheBody: the name of a person touches head and shoulders, or has a leader. One that
// stood beyond the knees of somebody at a table was read as the name of what lay on it.
func TestNamesStandAtTheBody(t *testing.T) {
	f := fixture.Family(t)
	ins := []Input{fixture.Example()}
	for n := range int64(6) {
		ins = append(ins, crowd(n, 6))
	}
	for n, in := range append(ins, sampleInputs(t, "ferry-office")...) {
		s := sheetFor(t, in, Options{Paper: "A3", Font: f})
		v := s.fitter.View(&s.layout)
		for i := range in.Setup.People {
			who := &in.Setup.People[i]
			body := trunk(s, who, v)
			for _, a := range letteringOf(&s.pages[0], f) {
				if a.s != who.Name || a.layer != ink.People || len(leadersOf(&s.pages[0], "person:"+who.Name)) > 0 {
					continue
				}
				if !carto.Overlap(a.box, box.Corners(box.Inset(body, -2, -2))) {
					t.Errorf("set-up %d: %q stands off %s's shoulders", n, a.s, who.Name)
				}
			}
		}
	}
}

// trunk is the box of head and shoulders; of somebody lying, of all of them.
func trunk(s *sheet, who *plan.Person, v layout.View) r2.Box {
	if string(who.Pose) == string(symbols.Lying) {
		return s.d.People[who.Name].Box()
	}
	all := ink.Extent{}
	all.Add(symbols.Person{Pose: symbols.Pose(who.Pose), At: v.Paper(who.At), Faces: who.Faces, Scale: v.Scale}.Trunk()...)
	return all.Box
}

// leadersOf are the single straight lines of an object on the layer of people.
func leadersOf(p *ink.Page, object string) (all []*ink.Item) {
	for _, it := range marksOf(p, object, ink.People) {
		if q := ink.Path(it.Path).Points(0.01); len(q) == 2 {
			all = append(all, it)
		}
	}
	return all
}

// TestFillCountsFromTheKeyInWords: contours and meters count from the working stop; what counts from the
// key says so, and a tie has no sign.
func TestFillCountsFromTheKeyInWords(t *testing.T) {
	for _, c := range []struct {
		stops       float64
		plan, table string
	}{
		{2.19, "2.2 under key\nT1+⅔ fill", "2.2 stops"},
		{-0.42, "0.4 over key\nT1+⅔ fill", "−0.4 stops"},
		{-0.03, "equal to key\nT1+⅔ fill", "equal"},
		{0, "equal to key\nT1+⅔ fill", "equal"},
	} {
		in := fixture.Example()
		in.Faces[0].Contrast = c.stops
		s := sheetFor(t, in, Options{Paper: "A3", Font: fixture.Family(t)})
		for _, want := range []string{c.plan, c.table} {
			if !strings.Contains(texts(&s.pages[0]), want) {
				t.Errorf("at %g stops of contrast the sheet does not say %q", c.stops, want)
			}
		}
	}
}

// TestAssumedNamesLightsByTheirNumber: the crew has numbers, the file has names.
func TestAssumedNamesLightsByTheirNumber(t *testing.T) {
	in := fixture.Example()
	in.Setup.Assumed = append(in.Setup.Assumed, fixture.Assume("grip.black", "height", "1.40 m")...)
	said := Text(Options{Font: fixture.Family(t)}, in)
	for _, want := range []string{"\n  1 day ", "\n  3 lamp ", "\n  G1 black ", "\n  ruth "} {
		if !strings.Contains(said, want) {
			t.Errorf("the list of what was assumed does not say %q:\n%s", want, said)
		}
	}
}

// TestLeadersComeToAFaceFromItsSide: a leader that crossed the head would point at the other side.
func TestLeadersComeToAFaceFromItsSide(t *testing.T) {
	ins := []Input{fixture.Example()}
	for n := range int64(8) {
		ins = append(ins, crowd(n, 6))
	}
	for _, name := range samples.Names() {
		ins = append(ins, sampleInputs(t, name)...)
	}
	for n, in := range ins {
		s := sheetFor(t, in, Options{Paper: "A3", Font: fixture.Family(t)})
		v := s.fitter.View(&s.layout)
		for i := range in.Setup.People {
			who := &in.Setup.People[i]
			head := symbols.Person{At: v.Paper(who.At), Faces: who.Faces, Scale: v.Scale}.Head() // a ring of corners, turned as it is drawn
			for _, side := range []string{".key", ".fill"} {
				for _, mark := range marksOf(&s.pages[0], "reading:"+who.Name+side, ink.Readings) {
					if len(ink.ClipPolyline(ink.Path(mark.Path).Points(0.01), head)) > 0 {
						t.Errorf("set-up %d: a line of %s%s crosses the head", n, who.Name, side)
					}
				}
			}
		}
	}
}
