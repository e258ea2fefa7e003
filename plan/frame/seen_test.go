package frame_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/plane"
)

// The worst place of a track is found to a millimetre wherever it lies: between two places that it is looked from, beside either end, and where both
// rank alike. Of what ranks nowhere it is the start.
func TestTheWorstPlaceOfATrack(t *testing.T) {
	s := plan.Setup{Cameras: []plan.Camera{camera(24.89, 14, 35)}}
	s.Cameras[0].Track = &plan.Track{Corners: []r2.Vec{{}, {X: 0.6}, {X: 0.6, Y: 0.4}}}
	for _, peak := range []float64{0, 0.03, 0.05, 0.47, 0.55, 0.6, 0.95, 0.97, 1} {
		if got := frame.PeakOf(&s, func(along float64) float64 { return -math.Abs(along - peak) }); !(math.Abs(got-peak) <= 1.1e-3) {
			t.Errorf("the worst of all lies %.4f m along, want %.4f", got, peak)
		}
		higher := func(along float64) float64 { return math.Max(2-10*math.Abs(along-peak), 1-math.Abs(along-0.2)) }
		if got := frame.PeakOf(&s, higher); !(math.Abs(got-peak) <= 1.1e-3) {
			t.Errorf("the worse of two lies %.4f m along, want %.4f", got, peak)
		}
	}
	if got := frame.PeakOf(&s, func(float64) float64 { return math.Inf(-1) }); got != 0 {
		t.Errorf("of what ranks nowhere the worst lies %g m along", got)
	}
}

// Where two places of a cable's way are one, the rest of it still lies there: each leg a box 1 cm thick.
func TestCablesWithAPlaceTwice(t *testing.T) {
	way := []r3.Vec{{}, {X: 1}, {X: 1}, {X: 1, Y: 2}, {X: 1, Y: 2, Z: 0.5}}
	all := frame.CableOn(way)
	want := []r3.Vec{{X: 0.5, Z: 0.005}, {X: 1, Y: 1, Z: 0.005}, {X: 1, Y: 2, Z: 0.255}}
	if len(all) != len(want) {
		t.Fatalf("%d legs, want %d", len(all), len(want))
	}
	for i := range all {
		if r3.Norm(r3.Sub(all[i].Middle, want[i])) > 1e-9 {
			t.Errorf("leg %d lies about %v, want %v", i, all[i].Middle, want[i])
		}
	}
}

// What lies before other parts of a thing counts once: a bar that is crossed by a strip and by a square is what it has beyond both.
func TestWhatIsCoveredCountsOnce(t *testing.T) {
	box := func(x0, x1, y0, y1 float64) []r2.Vec {
		return []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	}
	strip, bar := box(-100, 100, -1000, 1000), box(-800, 800, -50, 50)
	for _, x := range []float64{400, -600} {
		want := (200.0*2000 + 200*200 + 1400*100 - 200*100) / 4e6
		if got := frame.ShareOf(strip, box(x, x+200, -100, 100), bar); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("with a square at %g they take %g, want %g", x, got, want)
		}
	}
}

// A thing is moved aside no farther than takes all of it out of the picture: as wide as that is behind it, from where it lies, by the ball that holds it
// and 30 cm.
func TestHowFarThingsAreMoved(t *testing.T) {
	const x, deep, radius = 0.4, 1.5, 0.2
	for _, lens := range closed {
		s := ball(r3.Vec{X: x, Y: deep}, radius)
		s.Cameras = []plan.Camera{camera(lens[0], lens[1], lens[2])}
		got := frame.FarthestMoves(&s)
		half := lens[0] / 2 / lens[2]
		out := (deep+radius)*half + radius + 0.3
		for way, want := range map[frame.Way]float64{frame.Left: out + x, frame.Right: out - x, frame.Back: 2.5, frame.Up: 1.5} {
			if !(math.Abs(got[way]-want) <= 1e-9) {
				t.Errorf("lens %v: %s by %g m at most, want %g", lens, way, got[way], want)
			}
		}
	}
}

// What the light of a lamp leaves by has the size of its opening: flat before a face, as deep as high of a tube.
func TestOpeningsOfLamps(t *testing.T) {
	f := plan.Frame{At: r3.Vec{X: 1, Y: 2, Z: 3}, Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}
	for _, c := range []struct {
		o    photometry.Opening
		want r3.Vec // m across, along the axis and up
	}{
		{photometry.Opening{Form: photometry.Rectangle, Width: 0.6, Height: 0.4}, r3.Vec{X: 0.6, Z: 0.4}},
		{photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.04}, r3.Vec{X: 1.2, Y: 0.04, Z: 0.04}},
		{photometry.Opening{Form: photometry.Disc, Width: 0.5}, r3.Vec{X: 0.5, Z: 0.5}},
		{photometry.Opening{}, r3.Vec{X: 0.3, Z: 0.3}}, // by its mouth
	} {
		l := &plan.Light{Frame: f, Head: kit.Head{Aperture: 0.3, Source: photometry.Source{Opening: c.o}}}
		low, high := r3.Vec{X: 9, Y: 9, Z: 9}, r3.Vec{X: -9, Y: -9, Z: -9}
		for _, b := range frame.OpeningOf(l) {
			for _, p := range pointsOf(&b) {
				low = r3.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}
				high = r3.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y), Z: max(high.Z, p.Z)}
			}
		}
		if got := r3.Sub(high, low); r3.Norm(r3.Sub(got, c.want)) > 1e-9 || r3.Norm(r3.Sub(r3.Scale(0.5, r3.Add(low, high)), f.At)) > 1e-9 {
			t.Errorf("%+v: what light leaves by is %v about %v, want %v", c.o, got, r3.Scale(0.5, r3.Add(low, high)), c.want)
		}
	}
}

// Where a lamp before a lens comes from is said by eight words, as a rose has its points. Of a lamp close before the lens, of one behind cloth and of one
// that shines away nothing is said.
func TestWhereGlareComesFrom(t *testing.T) {
	words := []string{"the right", "the upper right", "above", "the upper left", "the left", "the lower left", "below", "the lower right"}
	glare := func(x, z, deep float64, change func(l *plan.Light)) []frame.Glare {
		s := ball(r3.Vec{X: x, Y: deep, Z: z}, 0.05)
		l := &s.Lights[0]
		l.Head.Source.Flux, l.Head.Source.Distribution, l.Count, l.Level = 1000, photometry.Lambertian(photometry.Sphere), 1, 1
		change(l)
		s.Cameras = []plan.Camera{camera(24.89, 14, 35)}
		return frame.Glares(&s)
	}
	for degrees := 3; degrees < 360; degrees += 6 {
		sin, cos := math.Sincos(float64(degrees) * math.Pi / 180)
		want := words[(2*degrees+45)/90%8]
		if got := glare(2.5*cos, 2.5*sin, 3, func(*plan.Light) {}); len(got) != 1 || got[0].From != want || !(math.Abs(got[0].OffAxis-math.Atan2(2.5, 3)*180/math.Pi) <= 1e-9) {
			t.Errorf("a lamp at %d° comes from %+v, want %s", degrees, got, want)
		}
	}
	for degrees, seen := range map[float64]bool{59.9: true, 60.1: false, 119: false, 240: false} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		if got := glare(-3*sin, 0, 3*cos, func(*plan.Light) {}); (len(got) == 1) != seen {
			t.Errorf("a lamp %g° off the axis: %+v", degrees, got)
		}
	}
	if got := glare(0.2, 0, 0.2, func(*plan.Light) {}); len(got) != 0 {
		t.Errorf("a lamp on the lens: %+v", got)
	}
	if got := glare(0, 0, 3, func(l *plan.Light) { l.Diffusion = []string{"silk"} }); len(got) != 0 {
		t.Errorf("a lamp behind cloth: %+v", got)
	}
	away := func(l *plan.Light) {
		l.Head.Source.Distribution, l.Frame.Axis = photometry.Lambertian(photometry.Disc), r3.Vec{Y: 1}
	}
	if got := glare(0, 0, 3, away); len(got) != 0 {
		t.Errorf("a lamp that shines away: %+v", got)
	}
}

// A face shows in clear glass square before the lens as large as its image there, which lies as far behind the glass as it lies before that.
func TestAFaceInGlass(t *testing.T) {
	s := resolvedText(t, "rooms: {den: {size: [6, 4]}}\nopenings: {w: {window: den.top, width: 4, sill: 0.3, head: 2.5, panes: [1, 1]}}\n"+
		"cameras: {A: {at: [3, 1.5], height: 1.4, looks: 0, lens: 25 mm}}\nlights: {k: {unit: led-panel-100, at: [3.3, 0.5], height: 1.6, aim: 0}, off: {unit: led-panel-100, at: [2.7, 0.5], height: 1.6, aim: 180}}\n")
	c, o := &s.Cameras[0], s.Lights[0].Head.Source.Opening
	var found []frame.Reflection
	for _, r := range frame.Reflections(s) {
		if r.Glass {
			found = append(found, r)
		}
	}
	if len(found) == 0 || found[0].Name != "k" || o.Form != photometry.Rectangle {
		t.Fatalf("in the glass show %+v", found)
	}
	for _, r := range found {
		glass := (r.From.Y + c.Frame.At.Y) / 2 // half way to the image of the lens
		far := glass - c.Frame.At.Y + glass - s.Lights[0].Frame.At.Y
		want := o.Width * o.Height / (far * far) / (c.Gate[0] * c.Gate[1] / (c.Lens * c.Lens))
		if r.Name != "k" || !(math.Abs(r.Share/want-1) <= 1e-3) || glass < 3.9 || glass > 4.3 {
			t.Errorf("%s takes %.6f in a pane at %.3f m, want %.6f", r.Name, r.Share, glass, want)
		}
	}
}

// A cloth before a head belongs to it: it is where the scene has it, and goes along when the head is moved.
func TestClothGoesAlongWithItsHead(t *testing.T) {
	const scene = "cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {unit: led-panel-100, at: [0, 3], height: 1.5, aim: 200MORE}}\n"
	plain, clothed := resolvedText(t, scene, "MORE", ""), resolvedText(t, scene, "MORE", ", diffusion: half-diffusion")
	was, is := frame.BodiesOf(plain, frame.Light, "k", "A"), frame.BodiesOf(clothed, frame.Light, "k", "A")
	if len(is) != len(was)+1 {
		t.Fatalf("with a cloth a head has %d bodies, without it %d", len(is), len(was))
	}
	for i := range clothed.Set.Sheets {
		sheet := &clothed.Set.Sheets[i]
		found := false
		for _, b := range is {
			for _, face := range b.Faces {
				off := 0.0
				for k := range face {
					if len(face) != len(sheet.Corners) {
						off = 9
						break
					}
					off = max(off, r3.Norm(r3.Sub(face[k], sheet.Corners[k])))
				}
				found = found || off < 1e-9
			}
		}
		if !found {
			t.Errorf("no body of the head is its cloth %v", sheet.Corners)
		}
	}
}

// A mirror is not turned so far that the camera comes behind it, for its other side may mirror too: of a board that stands all but edge-on, and a flag
// straight behind it, only the way that turns it to the camera clears, by as much as trial by rays over the plan says.
func TestAMirrorIsNotTurnedAway(t *testing.T) {
	s := resolvedText(t, "cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 50 mm}}\n"+
		"grip: {m: {card: [1, 1], surface: mirror, at: [0, 3], height: 1.4, faces: 91, mount: hand}, f: {flag: [1, 1], at: [0, 6], height: 1.4, faces: 180, mount: hand}}\n")
	shows := func(turn float64) bool { // with the board turned clockwise by degrees
		n := plane.Direction(91 + turn)
		along := r2.Vec{X: n.Y, Y: -n.X}
		board := r2.Vec{Y: 3}
		image := r2.Scale(2*r2.Dot(n, board), n) // of the lens, at the origin
		for k := range 2001 {
			flag := r2.Vec{X: float64(k-1000) / 2000, Y: 6}
			way := r2.Sub(flag, image)
			share := r2.Dot(n, r2.Sub(board, image)) / r2.Dot(n, way)
			at := r2.Add(image, r2.Scale(share, way))
			if share > 0 && share < 1 && math.Abs(r2.Dot(along, r2.Sub(at, board))) < 0.5 {
				return true
			}
		}
		return false
	}
	want := 0.5
	for shows(want) {
		want += 0.5
	}
	for _, r := range frame.Reflections(s) {
		if r.In == "m" && r.Name == "f" {
			if r.Turn == nil || r.Turn.Way != frame.Clockwise || r.Turn.Degrees != want || !shows(0) || want < 2 {
				t.Errorf("the board is turned by %+v, want %g° clockwise", r.Turn, want)
			}
			return
		}
	}
	t.Errorf("the board shows no flag; by rays over the plan: %v", shows(0))
}

// Somebody out of the picture who has marks is judged where they show most.
func TestPeopleAreJudgedAtTheirWorstMark(t *testing.T) {
	const scene = "cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 35 mm}}\npeople: {ben: {at: [AT0, 4], faces: 180, seen: false, marks: {one: {at: [AT1, 4], faces: 180}, two: {at: [AT2, 4], faces: 180}}}}\n"
	for _, c := range []struct{ at, one, two, mark string }{
		{"0", "6", "3", ""}, {"6", "0", "3", "ben.one"}, {"6", "3", "0.2", "ben.two"}, {"1.5", "0", "3", "ben.one"}, {"0", "1.5", "3", ""}, {"6", "3", "8", "ben.one"},
		{"40", "50", "60", ""}, // nowhere near
	} {
		got := sightOf(frame.Judge(resolvedText(t, scene, "AT0", c.at, "AT1", c.one, "AT2", c.two)), frame.Person, "ben")
		if got.Mark != c.mark {
			t.Errorf("at %s, %s and %s m: judged at %q, want %q", c.at, c.one, c.two, got.Mark, c.mark)
		}
	}
}
