package symbols

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// page draws an entry at a scale in the printed look.
func page(e Entry, scale float64) (*ink.Page, Drawn) {
	var p ink.Page
	d := e.Draw(ink.NewCanvas(&p, ink.Symbols).Of(e.Key, "a sentence"), printLook(), scale)
	return &p, d
}

// TestNoTwoSymbolsShareTheirPixels holds the set to a copier: black on white, where the colour of light is
// that of paper or a grey, at the smallest scale.
func TestNoTwoSymbolsShareTheirPixels(t *testing.T) {
	const most = 0.85
	for _, light := range []ink.Colour{{R: 255, G: 255, B: 255}, {R: 150, G: 150, B: 150}} {
		apart(t, most, signsOf(Catalogue(), Look{Paper: ink.Colour{R: 255, G: 255, B: 255}, Sample: light}, 10))
	}
}

// TestStatesAreToldApart compares every class of light on, off, pointing down and pointing up with every other, with
// faces of one size.
func TestStatesAreToldApart(t *testing.T) {
	var all []Entry
	for _, class := range Classes() {
		for _, state := range []string{"on", "off", "down", "up", "down off", "up off"} {
			for _, round := range []bool{false, true} {
				l := Lamp{Class: class, Face: vec(6, 6), Body: vec(2.5, 3), Round: round, Off: strings.HasSuffix(state, "off")}
				switch {
				case strings.HasPrefix(state, "down"):
					l.Tilt = -90
				case strings.HasPrefix(state, "up"):
					l.Tilt = 90
				}
				if soft := class == Boxed || class == Panel; round && !soft || l.Tilt != 0 && !l.Upright() || round && l.Tilt == 0 {
					continue // the same light again
				}
				if round && class == Panel || l.Upright() && !softOrLensed(class) || l.Off && l.Tilt > 0 {
					continue // all hard ones look alike from above, and all round faces, and a dark one up or down
				}
				all = append(all, Entry{Key: strings.TrimSpace(string(class) + " " + state), draw: func(c ink.Canvas, k Look, _ float64) Drawn {
					l.Colour = k.Sample
					return DrawLight(c, k, l)
				}})
			}
		}
	}
	for _, light := range []ink.Colour{{R: 255, G: 255, B: 255}, {R: 150, G: 150, B: 150}} {
		apart(t, 0.85, signsOf(all, Look{Paper: ink.Colour{R: 255, G: 255, B: 255}, Sample: light}, 10))
	}
}

func softOrLensed(c Class) bool { return c == Boxed || c == Panel || c == Lensed }

// drawnSign is an entry as pixels.
type drawnSign struct {
	key string
	raster
}

func signsOf(all []Entry, k Look, scale float64) (out []drawnSign) {
	for _, e := range all {
		var p ink.Page
		e.Draw(ink.NewCanvas(&p, ink.Symbols), k, scale)
		out = append(out, drawnSign{e.Key, rasterise(&p)})
	}
	return out
}

// apart fails where two signs share more than a share of their pixels.
func apart(t *testing.T, most float64, all []drawnSign) {
	t.Helper()
	worst, pair := 0.0, ""
	for i := range all {
		for j := range i {
			s := shared(all[i].raster, all[j].raster, worst)
			if s >= most {
				t.Errorf("%s and %s share %.0f %% of their pixels", all[i].key, all[j].key, 100*s)
			}
			if s > worst {
				worst, pair = s, all[i].key+" and "+all[j].key
			}
		}
	}
	t.Logf("most alike: %s, %.0f %%", pair, 100*worst)
}

func TestLinesHaveTheFiveWidths(t *testing.T) {
	widths := []float64{0.18, 0.25, 0.35, 0.5, 0.7}
	for _, e := range Catalogue() {
		for _, scale := range []float64{10, 20, 50} {
			p, _ := page(e, scale)
			for _, it := range p.Items {
				if it.Stroke != nil && !slices.Contains(widths, it.Stroke.Width) {
					t.Errorf("%s at %g: a line of %g mm", e.Key, scale, it.Stroke.Width)
				}
			}
		}
	}
}

func TestSymbolsAreNamedOnceAndSayWhatTheyAre(t *testing.T) {
	keys, names := map[string]bool{}, map[string]bool{}
	for _, e := range Catalogue() {
		if keys[e.Key] || names[e.Group+e.Name] {
			t.Errorf("%s, %s stands twice", e.Key, e.Name)
		}
		keys[e.Key], names[e.Group+e.Name] = true, true
		if e.Words == "" || strings.HasSuffix(e.Words, ".") {
			t.Errorf("%s: words %q", e.Key, e.Words)
		}
		p, _ := page(e, 20)
		if len(p.Items) == 0 {
			t.Fatalf("%s draws nothing", e.Key)
		}
		alts := 0
		for _, it := range p.Items {
			if it.Object != e.Key {
				t.Errorf("%s: a mark belongs to %q", e.Key, it.Object)
			}
			if it.Alt != "" {
				alts++
			}
		}
		if alts != 1 {
			t.Errorf("%s: %d marks carry the sentence, want one", e.Key, alts)
		}
	}
	for _, key := range wantedKeys() {
		if !keys[key] {
			t.Errorf("%s is missing from the catalogue", key)
		}
	}
}

// openingKinds lists the kinds of opening.
func openingKinds() []OpeningKind { return []OpeningKind{Window, Door, Gap} }

// wantedKeys lists what a plan can hold.
func wantedKeys() (keys []string) {
	for _, c := range Classes() {
		keys = append(keys, "light:"+string(c))
	}
	for _, h := range Holds() {
		keys = append(keys, "mount:"+string(h))
	}
	for _, g := range GripKinds() {
		keys = append(keys, "grip:"+string(g))
	}
	for _, p := range Poses() {
		keys = append(keys, "person:"+string(p))
	}
	for _, o := range openingKinds() {
		keys = append(keys, "opening:"+string(o))
	}
	for _, f := range FurnitureKinds() {
		keys = append(keys, "furniture:"+string(f))
	}
	for _, m := range MeterKinds() {
		keys = append(keys, "reading:"+string(m))
	}
	return append(keys, "camera", "reading:face", "mark", "walk", "throw", "north", "scale-bar")
}

func TestTheEmittingEdgeHasItsTrueWidthAndColour(t *testing.T) {
	blue := ink.Colour{R: 90, G: 140, B: 255}
	for _, class := range Classes() {
		for _, width := range []float64{4, 9, 24} {
			for _, bearing := range []float64{0, 90, 213} {
				var p ink.Page
				DrawLight(ink.NewCanvas(&p, ink.Symbols), printLook(), Lamp{Class: class, At: r2.Vec{X: 50, Y: 40}, Bearing: bearing, Face: r2.Vec{X: width, Y: width}, Colour: blue})
				across := ink.Direction(bearing + 90)
				low, high := math.Inf(1), math.Inf(-1)
				for _, it := range p.Items {
					if it.Fill == nil || *it.Fill != blue {
						continue
					}
					for _, q := range ink.Path(it.Path).Points(0.001) {
						d := r2.Dot(r2.Sub(q, r2.Vec{X: 50, Y: 40}), across)
						low, high = min(low, d), max(high, d)
					}
				}
				want := width
				if class == Practical {
					want = 2 * min(max(0.31*width, 1.4), 2.2) // the lamp under its shade, which has the true width
				}
				if !(math.Abs(high-low-want) <= 0.01) || !(math.Abs(high+low) <= 0.01) {
					t.Errorf("%s %g mm wide at %g°: lit from %.2f to %.2f mm", class, width, bearing, low, high)
				}
			}
		}
	}
}

func TestBodiesCanBeReadAtAHundredth(t *testing.T) {
	for _, e := range Catalogue() {
		if e.Group != "Lights" && e.Group != "Grip" && e.Group != "People and camera" {
			continue
		}
		p, _ := page(e, 10)
		b := p.Bounds(nil).Box
		w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
		if max(w, h) < 2.4 || min(w, h) < 1.2 {
			t.Errorf("%s is %.1f by %.1f mm at 1:100", e.Key, w, h)
		}
	}
}

func TestBoundsHoldTheMarks(t *testing.T) {
	for _, e := range Catalogue() {
		p, d := page(e, 20)
		if e.Key == "throw" || e.Group == "Openings" {
			continue // a throw is a line; an opening's example stands in a piece of wall
		}
		var told ink.Extent
		told.Add(d.Body...)
		for _, r := range d.Rest {
			told.Add(r...)
		}
		drawn, box := p.Bounds(nil).Box, told.Grown(0.6).Box
		if drawn.Min.X < box.Min.X || drawn.Min.Y < box.Min.Y || drawn.Max.X > box.Max.X || drawn.Max.Y > box.Max.Y {
			t.Errorf("%s draws %v, and says %v", e.Key, drawn, told.Box)
		}
		if d.Box() != boxOf(d.Body) {
			t.Errorf("%s: box %v", e.Key, d.Box())
		}
	}
}

func TestOutlinesAreConvex(t *testing.T) {
	for _, e := range Catalogue() {
		_, d := page(e, 20)
		for _, ring := range append([][]r2.Vec{d.Body}, d.Rest...) {
			turns := map[bool]int{}
			for i := range ring {
				a, b, c := ring[i], ring[(i+1)%len(ring)], ring[(i+2)%len(ring)]
				if cross := r2.Cross(r2.Sub(b, a), r2.Sub(c, b)); math.Abs(cross) > 1e-9 {
					turns[cross > 0]++
				}
			}
			if len(turns) > 1 {
				t.Errorf("%s: the outline %v is not convex", e.Key, ring)
			}
		}
	}
}

func TestATurnedSymbolIsTheSameSymbol(t *testing.T) {
	lamp := exampleMount(Boom, printLook(), 20)
	draw := func(bearing float64) []ink.Item {
		var p ink.Page
		DrawLight(ink.NewCanvas(&p, ink.Symbols).At(r2.Vec{X: 60, Y: 60}, bearing, 1), printLook(), lamp)
		return p.Items
	}
	turnBack := ink.Paper().At(r2.Vec{X: 60, Y: 60}, -37, 1)
	straight, turned := draw(0), draw(37)
	for i := range straight {
		for j, s := range straight[i].Path {
			if s.Op == ink.Close {
				continue
			}
			back := turnBack.Place(r2.Sub(turned[i].Path[j].P[0], r2.Vec{X: 60, Y: 60}))
			if d := r2.Norm(r2.Sub(back, s.P[0])); d > 1e-9 {
				t.Fatalf("mark %d: turned and back it is %g mm off", i, d)
			}
		}
	}
}

func TestOddSizesDrawSomethingFinite(t *testing.T) {
	finite := func(name string, p *ink.Page) {
		for _, it := range p.Items {
			for _, q := range ink.Path(it.Path).Points(0.1) {
				if math.IsNaN(q.X+q.Y) || math.IsInf(q.X+q.Y, 0) {
					t.Fatalf("%s: a point at %v", name, q)
				}
			}
		}
	}
	k := printLook()
	for _, size := range []float64{0, 1e-6, 0.3, 5000} {
		for _, tilt := range []float64{0, -45, -90, 90} {
			var p ink.Page
			c := ink.NewCanvas(&p, ink.Symbols)
			for _, class := range append(Classes(), "unheard-of") {
				for _, hold := range append(Holds(), "unheard-of") {
					DrawLight(c, k, Lamp{Class: class, Tilt: tilt, Face: r2.Vec{X: size, Y: size}, Mount: Mount{Hold: hold, Footprint: size}})
				}
			}
			for _, kind := range append(GripKinds(), "unheard-of") {
				DrawGrip(c, k, Grip{Kind: kind, Tilt: tilt, Size: r2.Vec{X: size, Y: size}, Mount: Mount{Hold: InHand}})
			}
			for _, kind := range append(FurnitureKinds(), "unheard-of") {
				DrawFurniture(c, k, Furniture{Kind: kind, Size: r2.Vec{X: min(size, 50), Y: min(size, 50)}, Scale: min(size, 50), Steps: 3})
			}
			for _, pose := range append(Poses(), "unheard-of") {
				DrawPerson(c, k, Person{Pose: pose, Scale: size})
			}
			for _, kind := range append(openingKinds(), "unheard-of") {
				DrawOpening(c, k, Opening{Kind: kind, Right: r2.Vec{X: size}, Out: r2.Vec{Y: size}, Panes: 3, Escape: true})
			}
			DrawCamera(c, k, Camera{Scale: size})
			finite("sizes", &p)
		}
	}
}

func TestDoorsSwingWhereTheyShould(t *testing.T) {
	// A wall along x, the room below it: seen from inside, left is left.
	base := Opening{Kind: Door, Left: r2.Vec{X: 0}, Right: r2.Vec{X: 10}, Out: r2.Vec{Y: 2}, Ajar: 90}
	for _, c := range []struct {
		left, in bool
		tip      r2.Vec
	}{
		{true, true, r2.Vec{X: 0, Y: -10}}, {false, true, r2.Vec{X: 10, Y: -10}},
		{true, false, r2.Vec{X: 0, Y: 12}}, {false, false, r2.Vec{X: 10, Y: 12}},
	} {
		o := base
		o.HingeLeft, o.SwingIn = c.left, c.in
		var p ink.Page
		d := DrawOpening(ink.NewCanvas(&p, ink.Walls), printLook(), o)
		swing := d.Rest[0]
		if got := swing[3]; r2.Norm(r2.Sub(got, c.tip)) > 1e-9 {
			t.Errorf("hinge left %v, in %v: the leaf opens to %v, want %v", c.left, c.in, got, c.tip)
		}
		var marks ink.Extent
		for _, it := range p.Items {
			marks.Join(ink.Path(it.Path).Bounds())
		}
		if b := marks.Box; c.in && b.Min.Y > -9.9 || !c.in && b.Max.Y < 11.9 {
			t.Errorf("hinge left %v, in %v: drawn in %v", c.left, c.in, b)
		}
	}
}

// ems is a typeface whose letters are all half an em wide.
type ems struct{}

func (ems) Width(s string, size float64, bold bool) float64 { return size / 2 * float64(len(s)) }
func (ems) Ascent(size float64) float64                     { return 0.9 * size }
func (ems) Descent(size float64) float64                    { return 0.2 * size }

func TestTheSheetShowsTheWholeSet(t *testing.T) {
	p := Sheet(ems{})
	names, objects := map[string]bool{}, map[string]bool{}
	for _, it := range p.Items {
		objects[it.Object] = true
		if it.Text != nil {
			names[it.Text.S] = true
			if it.Text.Size*0.72 < 1.8 {
				t.Errorf("%q is %.2f mm high, want 1.8", it.Text.S, it.Text.Size*0.72)
			}
		}
	}
	for _, e := range Catalogue() {
		if !names[e.Name] || !objects["symbol:"+e.Key] {
			t.Errorf("%s is missing from the sheet", e.Key)
		}
	}
	for _, g := range groups(Catalogue()) {
		if !names[g.name] {
			t.Errorf("the heading %q is missing", g.name)
		}
	}
	if b := p.Bounds(ems{}).Box; b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > p.Width || b.Max.Y > p.Height {
		t.Errorf("the sheet draws %v, beyond its paper", b)
	}
	if !reflect.DeepEqual(p, Sheet(ems{})) {
		t.Error("two sheets differ")
	}
}

func TestCellsOfTheSheetKeepApart(t *testing.T) {
	p := Sheet(ems{})
	keepApart(t, &p)
}

// A symbol more needs no more than its line in the catalogue: where a row can no longer hold two groups, a group is broken, and
// where that is not enough the paper is a size larger.
func TestTheSheetHoldsMoreSymbols(t *testing.T) {
	for more := 1; more <= 16; more++ {
		all := Catalogue()
		last := slices.IndexFunc(all, func(e Entry) bool { return e.Key == "furniture:box" })
		for i := range more {
			e := all[last]
			e.Key, e.Name = e.Key+strings.Repeat("+", i+1), e.Name+" "+string(rune('a'+i))
			all = slices.Insert(all, last+1, e)
		}
		p := sheetOf(all, ems{}, printLook())
		keepApart(t, &p)
		if more == 1 && p.Width != papers[0].width || p.Width > papers[1].width {
			t.Errorf("with %d symbols more the paper is %g mm wide", more, p.Width)
		}
	}
}

// keepApart fails where symbols and lettering of a sheet lie on each other, or outside its frame.
func keepApart(t *testing.T, p *ink.Page) {
	t.Helper()
	boxes := map[string]*ink.Extent{}
	var texts []ink.Extent
	for i := range p.Items {
		it := &p.Items[i]
		if strings.HasPrefix(it.Object, "symbol:") {
			if boxes[it.Object] == nil {
				boxes[it.Object] = &ink.Extent{}
			}
			boxes[it.Object].Join(it.Bounds(ems{}))
		} else if it.Text != nil {
			texts = append(texts, it.Bounds(ems{}))
		}
	}
	overlap := func(a, b r2.Box) bool {
		return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
	}
	for _, text := range texts {
		if text.Box.Min.Y < sheetRim || text.Box.Max.X > p.Width-sheetRim {
			t.Errorf("lettering at %v is off the sheet", text.Box)
		}
	}
	for name, b := range boxes {
		for other, o := range boxes {
			if name < other && overlap(b.Box, o.Box) {
				t.Errorf("%s and %s overlap", name, other)
			}
		}
		for i := range texts {
			if overlap(b.Box, texts[i].Box) {
				t.Errorf("%s overlaps lettering at %v", name, texts[i].Box)
			}
		}
	}
	for i := range texts {
		for j := range i {
			if overlap(texts[i].Box, texts[j].Box) {
				t.Errorf("lettering at %v and %v overlaps", texts[i].Box, texts[j].Box)
			}
		}
	}
}

// TestSidesOfAFaceAreStrokesOnTheHead: a mark that stands off the head is taken for a meter.
func TestSidesOfAFaceAreStrokesOnTheHead(t *testing.T) {
	head := r2.Vec{X: 40, Y: 30}
	for _, scale := range []float64{5, 20, 50} {
		for _, bearing := range []float64{0, 45, 200} {
			var p ink.Page
			d := DrawFaceSide(ink.NewCanvas(&p, ink.Symbols), printLook(), head, bearing, scale)
			if len(p.Items) != 1 || p.Items[0].Fill != nil {
				t.Fatalf("at %g: want one stroke, got %d marks", scale, len(p.Items))
			}
			for _, q := range ink.Path(p.Items[0].Path).Points(0.01) {
				off := r2.Sub(q, head)
				if far := r2.Norm(off) - headRadius(max(scale, minScale)); far < Line/2 || far > 2.5 {
					t.Errorf("at %g: a point of the stroke lies %.2f mm off the head", scale, far)
				}
				if got := ink.Bearing(r2.Vec{}, off); !(math.Abs(got-bearing) <= 1e-6) {
					t.Errorf("at %g: the stroke lies at %.1f°, want %g°", scale, got, bearing)
				}
			}
			if c := boxOf(d.Body); r2.Norm(r2.Sub(r2.Scale(0.5, r2.Add(c.Min, c.Max)), head)) < headRadius(scale) {
				t.Errorf("at %g: its body covers the head", scale)
			}
		}
	}
}

// TestTiltedGripHangsOverTheFloor: what a flag or a card covers when it is tilted is not painted over,
// as furniture is; its leading edge stays as thick as that of an upright one.
func TestTiltedGripHangsOverTheFloor(t *testing.T) {
	painted := func(kind GripKind, tilt float64) float64 {
		var p ink.Page
		DrawGrip(ink.NewCanvas(&p, ink.Symbols), printLook(), Grip{Kind: kind, Tilt: tilt, Size: r2.Vec{X: 24, Y: 24}})
		sum := 0.0
		for _, it := range p.Items {
			if it.Fill == nil {
				continue
			}
			ring, area := ink.Path(it.Path).Points(0.1), 0.0
			for i, q := range ring {
				area += r2.Cross(q, ring[(i+1)%len(ring)]) / 2
			}
			sum += math.Abs(area)
		}
		return sum
	}
	for _, kind := range []GripKind{Flag, Card} {
		if upright, tilted := painted(kind, 0), painted(kind, -30); !(math.Abs(upright-tilted) <= 1e-6) || upright < 10 {
			t.Errorf("%s: %.1f mm² are painted upright and %.1f tilted", kind, upright, tilted)
		}
	}
}

// TestATiltedDotIsAnEllipse: a round flag or net that is tilted was drawn as the rectangle about it.
func TestATiltedDotIsAnEllipse(t *testing.T) {
	const wide = 10.0
	for _, kind := range []GripKind{Flag, Net} {
		for _, tilt := range []float64{20, 45, 90} {
			var page ink.Page
			DrawGrip(ink.NewCanvas(&page, ink.Symbols), Look{}, Grip{Kind: kind, Tilt: tilt, Size: vec(wide, wide), Round: true})
			deep, reach := wide*math.Sin(tilt*math.Pi/180), 0.0
			for i := range page.Items {
				for _, p := range ink.Path(page.Items[i].Path).Points(0.01) {
					x, y := 2*p.X/wide, 2*p.Y/deep
					reach = max(reach, x*x+y*y)
				}
			}
			if !(math.Abs(reach-1) <= 0.02) {
				t.Errorf("%s tilted by %g°: it reaches to %.3f of its ellipse, squared", kind, tilt, reach)
			}
		}
	}
}

// TestShortCameras end sooner behind the lens, and look the same before it.
func TestShortCameras(t *testing.T) {
	usual, short := Camera{Scale: 40}, Camera{Scale: 40, Short: 0.4}
	of := func(c Camera) r2.Box {
		var page ink.Page
		return DrawCamera(ink.NewCanvas(&page, ink.Symbols), Look{}, c).Box()
	}
	a, b := of(usual), of(short)
	if near := a.Max.Y - b.Max.Y; !(math.Abs(near) <= 1e-9) {
		t.Errorf("the shade of a short one ends %.2f mm off", near)
	}
	if got, want := b.Min.Y-a.Min.Y, 0.4*0.25*40; !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("a short one ends %.2f mm sooner, want %.2f", got, want)
	}
}
