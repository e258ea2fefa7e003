package study_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// surfaceOf is a surface of the first picture of a study by its words.
func surfaceOf(t *testing.T, s *study.Study, words string) *meter.Surface {
	t.Helper()
	for i := range s.Readings.Pictures {
		for k := range s.Readings.Pictures[i].Surfaces {
			if one := &s.Readings.Pictures[i].Surfaces[k]; one.Words() == words {
				return one
			}
		}
	}
	t.Fatalf("no picture shows %s: %+v", words, s.Readings.Pictures)
	return nil
}

// screen is a wall on black ground with one bare point before it: nothing comes back from anywhere else.
const screen = `{scrimshaw: 1, units: %s, exposure: {stop: T2.8, range: {over: 3, under: 4}}, materials: {grey: {reflectance: 0.36}},
	furniture: {wall: {box: [%g, %g, %g], at: [%g, %g], turn: %g, material: grey}},
	cameras: {A: {at: [%g, %g], height: %g, lens: 25 mm, looks: [%g, %g, %g]}}, lights: {lamp: {output: {candela: 900, shape: uniform}, at: [%g, %g], height: %g}}}`

// turnedScreen is that scene turned about its origin by degrees, with lengths in a unit that is so many metres, mirrored or not.
func turnedScreen(units string, metres, degrees, side float64) string {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	at := func(x, y float64) (float64, float64) {
		x *= side
		return (x*cos + y*sin) / metres, (y*cos - x*sin) / metres
	}
	wx, wy := at(0.4, 4)
	cx, cy := at(-0.3, 0)
	ax, ay := at(0.5, 3.9)
	lx, ly := at(1.2, 2.9)
	return fmt.Sprintf(screen, units, 9/metres, 0.2/metres, 7/metres, wx, wy, degrees, cx, cy, 1.4/metres, ax, ay, 1.6/metres, lx, ly, 2.1/metres)
}

// closely looks at a wall lit by one bare point from many places of a frame by the closed form, L = ρ I cos / (π d²).
func closely(s *plan.Setup) (mean, most, least, clipped float64) {
	c, f, lamp := &s.Cameras[0], &s.Furniture[0], s.Lights[0].Frame.At
	normal := plan.Pointing(f.Turn+180, 0)
	face := r3.Add(plan.AtHeight(f.At, 0), r3.Scale(f.Size[1]/2, normal))
	wide, high := lens.HalfTangent(c.Gate[0], c.Lens), lens.HalfTangent(c.Gate[1], c.Lens)
	exposure := c.Exposure.Metered()
	least = math.Inf(1)
	n, clips := 0, 0
	for i := range 400 {
		for k := range 225 {
			way := r3.Add(c.Frame.Axis, r3.Add(r3.Scale(wide*((float64(i)+0.5)/200-1), c.Frame.Right), r3.Scale(high*((float64(k)+0.5)/112.5-1), c.Frame.Up())))
			p := r3.Add(c.Frame.At, r3.Scale(r3.Dot(r3.Sub(face, c.Frame.At), normal)/r3.Dot(way, normal), way))
			if p.Z < 0 {
				continue // the ground, which is black
			}
			d := r3.Sub(lamp, p)
			luminance := 0.36 * 900 * r3.Dot(d, normal) / math.Pow(r3.Norm(d), 3) / math.Pi
			over := exposure.SpotOver(luminance, c.Exposure.Stop.N)
			mean, most, least = mean+luminance, max(most, over), min(least, over)
			if over > 3 {
				clips++
			}
			n++
		}
	}
	return exposure.SpotOver(mean/float64(n), c.Exposure.Stop.N), most, least, float64(clips) / (400 * 225)
}

// A wall that one bare point lights is as the closed form has it over the frame: in metres, in feet, turned and mirrored.
func TestPictureOfAWall(t *testing.T) {
	for _, text := range []string{turnedScreen("m", 1, 0, 1), turnedScreen("ft", 0.3048, 30, 1), turnedScreen("m", 1, -137, -1)} {
		s := run(t, laidOut(t, text), study.Options{ReadingsOnly: true})
		wall := surfaceOf(t, s, "wall")
		mean, most, least, clipped := closely(s.Setup)
		off := [3]float64{*wall.Mean - mean, *wall.Most - most, *wall.Least - least}
		if !(math.Abs(off[0]) <= 0.02) || !(math.Abs(off[1]) <= 0.1) || !(math.Abs(off[2]) <= 0.1) {
			t.Errorf("mean, brightest and darkest are off by %.3f stops in\n%s", off, text)
		}
		if !(math.Abs(wall.Clipped-clipped) <= 0.01) || clipped < 0.02 {
			t.Errorf("%.3f of the frame clips, want %.3f", wall.Clipped, clipped)
		}
		p := s.Readings.Pictures[0]
		if len(p.Beyond) != 1 || p.Beyond[0].What != "wall" || p.Beyond[0].Sinks || p.Beyond[0].Share != wall.Clipped {
			t.Errorf("beyond: %+v", p.Beyond)
		}
	}
}

// Cloth that a lamp lights from behind is as bright as what falls on its far side and comes through scattered; frosted glass
// in a window likewise.
func TestPictureOfClothLitFromBehind(t *testing.T) {
	s := around(t, `{scrimshaw: 1, cameras: {A: {at: [0, 0], height: 1.5, lens: 85 mm, looks: [0, 3, 1.5]}},
		grip: {silk: {frame: [4, 4], at: [0, 3], height: 1.5, faces: 180, cloth: full-diffusion}},
		lights: {lamp: {output: {candela: 5000, shape: uniform}, at: [0, 8], height: 1.5}}}`)
	cloth := surfaceOf(t, s, "silk")
	sheet := &s.Setup.Set.Sheets[0]
	x := s.Setup.Cameras[0].Exposure
	want := x.Metered().SpotOver(5000.0/25*sheet.Back.Diffuse.Y()/math.Pi, x.Stop.N)
	if !(math.Abs(*cloth.Most-want) <= 0.02) || cloth.Share < 0.99 {
		t.Errorf("%+v: brightest %.3f, want %.3f", cloth, *cloth.Most, want)
	}
}

// windowed is a room with a window that the camera looks at: what stands behind it, and how it is glazed.
const windowed = `{scrimshaw: 1, rooms: {den: {size: [4, 4]}}, openings: {bay: {window: den.top, width: 2, sill: 0.5, head: 2.4%s}},
	cameras: {A: {at: [2, 0.5], height: 1.4, lens: 50 mm, looks: [2, 4, 1.4]}, B: {at: [3.5, 0.5], height: 1.4, lens: 25 mm, looks: [1, 0, 1.4]}},%s
	lights: {lamp: {output: {candela: 2000, shape: cosine}, at: [2, 6.5], height: 1.4, aim: bay}}}`

// Through a window one sees what stands behind it, less what the glass takes; where nothing stands nothing comes; and frosted glass
// shines by itself.
func TestPictureThroughAWindow(t *testing.T) {
	nothing := around(t, fmt.Sprintf(windowed, "", ""))
	if none := surfaceOf(t, nothing, "nothing through bay"); none.Share < 0.9 || none.Mean != nil || none.Clipped+none.Sunk > 0 {
		t.Errorf("%+v", none)
	}
	behind := around(t, fmt.Sprintf(windowed, "", " furniture: {shed: {box: [9, 0.3, 6], at: [2, 9]}}, meters: {far: {spot: [2, 8.85, 1.4], from: A}},"))
	shed, spot := surfaceOf(t, behind, "shed through bay"), behind.Readings.Named("far")
	if spot.Sees == nil || spot.Sees.Words() != "shed through bay" || !(math.Abs(*shed.Mean-*spot.Over) <= 0.5) {
		t.Errorf("the shed is %+v, and the spot %+v", shed, spot.Sees)
	}
	frosted := around(t, fmt.Sprintf(windowed, ", glass: glass-frosted", ""))
	pane := surfaceOf(t, frosted, "bay")
	through := 0.0
	for _, sheet := range frosted.Setup.Set.Sheets {
		through = max(through, sheet.Back.Diffuse.Y())
	}
	x := frosted.Setup.Cameras[0].Exposure
	distance := 6.5 - 4.075
	want := x.Metered().SpotOver(2000/distance/distance*through/math.Pi, x.Stop.N)
	if !(math.Abs(*pane.Most-want) <= 0.15) {
		t.Errorf("%+v: brightest %.2f, want %.2f", pane, *pane.Most, want)
	}
	if n := len(frosted.Readings.Pictures); n != 2 {
		t.Errorf("%d pictures of two cameras", n)
	}
}

// A lamp in the picture lies from grey as its luminance does, and what a camera holds is its own; where no scene says a range nothing
// is looked at for it, and nothing is said.
func TestPicturesOfLampsAndRanges(t *testing.T) {
	const text = `{scrimshaw: 1, exposure: {stop: T4%s}, people: {ada: {at: [0.5, 0.2], faces: 0, skin: 0.36}, bo: {at: [-0.6, 0], faces: 0}},
		cameras: {A: {at: [0, 4], height: 1.5, lens: 25 mm, looks: 180%s}},
		lights: {globe: {output: {luminance: 20000, sphere: 0.3}, at: [0, 1], height: 1.5, seen: true}}}`
	unstated := run(t, laidOut(t, fmt.Sprintf(text, "", "")), study.Options{ReadingsOnly: true})
	if unstated.Readings.Pictures != nil {
		t.Errorf("%+v", unstated.Readings.Pictures)
	}
	s := run(t, laidOut(t, fmt.Sprintf(text, ", range: {over: 20}", ", exposure: {range: {over: 1, under: 2}}")), study.Options{ReadingsOnly: true})
	p := s.Readings.Pictures[0]
	x := s.Setup.Cameras[0].Exposure
	if want := x.Metered().SpotOver(20000, x.Stop.N); len(p.Lamps) != 1 || !(math.Abs(*p.Lamps[0].Over-want) <= 1e-3) {
		t.Errorf("%+v, want %.3f", p.Lamps, want)
	}
	key := s.Readings.Named("ada.key")
	want := []meter.Beyond{{What: "the key side of ada", Person: "ada"}, {What: "1 globe", Light: "globe"}}
	if *key.Over+1 < 1 || len(p.Beyond) < 2 || len(p.Unjudged) != 1 || p.Unjudged[0] != "bo" {
		t.Fatalf("%.2f over, beyond %+v, unjudged %v", *key.Over, p.Beyond, p.Unjudged)
	}
	for _, w := range want {
		found := false
		for _, b := range p.Beyond {
			found = found || b.What == w.What && b.Person == w.Person && b.Light == w.Light && !b.Sinks && *b.Over > 1
		}
		if !found {
			t.Errorf("%+v does not name %+v", p.Beyond, w)
		}
	}
	if got, above := p.Beyond[0].Over, *key.Over+1; !(math.Abs(*got-above) <= 1e-9) {
		t.Errorf("the key side is %.3f over grey, want a stop over what the meter reads, %.3f", *got, above)
	}
}

// An empty scene has no pictures, and a camera in an empty world sees nothing.
func TestPicturesOfNothing(t *testing.T) {
	if s := around(t, `{scrimshaw: 1}`); len(s.Readings.Pictures) != 0 {
		t.Errorf("%+v", s.Readings.Pictures)
	}
	s := around(t, `{scrimshaw: 1, cameras: {A: {at: [0, 0], lens: 25 mm}}}`)
	if p := s.Readings.Pictures; len(p) != 1 || len(p[0].Surfaces) != 1 || p[0].Surfaces[0].Name != "" || p[0].Surfaces[0].Share < 1-1e-9 {
		t.Errorf("%+v", p)
	}
}
