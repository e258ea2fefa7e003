package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/internal/fixture"
)

// cued is the kitchen with cues at some times, s, each of which takes as long, and faces whose key sides go by over.
func cued(starts []float64, takes, end float64, over func(face int, seconds float64) float64, faces ...string) Input {
	in := fixture.Example()
	all := &meter.Cues{States: []meter.CueState{{}}, Axis: meter.CueAxis{Timed: true, End: end, Start: starts}}
	for i, start := range starts {
		in.Setup.Cues = append(in.Setup.Cues, plan.Cue{Name: fmt.Sprintf("q%d", i+1), Seconds: &start, Over: takes})
	}
	for i := range in.Setup.Cues {
		all.States = append(all.States, meter.CueState{Cue: &in.Setup.Cues[i]})
	}
	for i, face := range faces {
		c := meter.Curve{Person: face, Working: 2 * math.Sqrt2}
		for k := 0; k <= 20; k++ {
			seconds := end * float64(k) / 20
			v := over(i, seconds)
			c.Points = append(c.Points, meter.CurvePoint{Seconds: seconds, Over: &v})
		}
		all.Curves = append(all.Curves, c)
	}
	in.Cues = all
	return in
}

// A line of the graph is as high as its stops by the scale that is lettered beside it, and as far along as its seconds by the names of the
// cues below: the lines of the faces each with their name, in dashes of their own.
func TestTheGraphOfCues(t *testing.T) {
	over := func(face int, seconds float64) float64 { return 1.6*math.Sin(seconds/4+float64(face)) - 0.3 }
	in := cued([]float64{6, 24}, 3, 40, over, "ruth", "ruth.sink")
	family := fixture.Family(t)
	s := sheetFor(t, in, Options{Font: family})
	said := map[string]r2.Vec{}
	var half float64
	var lines [][]r2.Vec
	var order []string                                         // the dashes of the lines
	dashes, samples := map[string]bool{}, map[string]float64{} // of the lines; of the pieces beside the names, by height
	for _, it := range itemsOf(s, "graph:cues") {
		switch {
		case it.Text != nil:
			said[it.Text.S], half = it.Text.At, family.CapHeight(it.Text.Size)/2
		case len(it.Path) > 10:
			var points []r2.Vec
			for _, p := range it.Path {
				points = append(points, p.P[0])
			}
			lines, dashes[fmt.Sprint(it.Stroke.Dash)] = append(lines, points), true
			order = append(order, fmt.Sprint(it.Stroke.Dash))
		case len(it.Path) == 2 && it.Stroke != nil:
			samples[fmt.Sprint(it.Stroke.Dash)] = it.Path[0].P[0].Y
		}
	}
	for _, name := range []string{"ruth", "ruth.sink", "q1 6 s", "q2 24 s", "+1", "−1"} {
		if _, lettered := said[name]; !lettered {
			t.Fatalf("%s is not lettered: %v", name, said)
		}
	}
	if len(lines) != 2 || len(dashes) != 2 {
		t.Fatalf("%d lines in %d kinds of dashes", len(lines), len(dashes))
	}
	for face, name := range []string{"ruth", "ruth.sink"} {
		if off := math.Abs(samples[order[face]] - said[name].Y - half); off > 0.02 {
			t.Errorf("the piece of its line lies %.2f mm off the name of %s", off, name)
		}
	}
	rise, run := (said["+1"].Y-said["−1"].Y)/2, (said["q2 24 s"].X-said["q1 6 s"].X)/18
	for face, line := range lines {
		for k, at := range line {
			seconds := 40 * float64(k) / 20
			want := r2.Vec{X: said["q1 6 s"].X + (seconds-6)*run, Y: said["+1"].Y + half + (over(face, seconds)-1)*rise}
			if r2.Norm(r2.Sub(at, want)) > 0.02 {
				t.Fatalf("face %d is at %v after %g s, want %v", face, at, seconds, want)
			}
		}
	}
}

// Many cues with long names keep to their paper, and apart, and all stand in the table; more faces than there are dashes get a graph more.
func TestManyCuesAndFaces(t *testing.T) {
	var starts []float64
	for i := range 14 {
		starts = append(starts, float64(i)*1.5)
	}
	in := cued(starts, 1, 30, func(face int, _ float64) float64 { return float64(face) }, "ada", "noor", "the-longest-name-of-all-the-cast", "ada.sit", "noor.sit")
	in.Setup.Cues[3].Name = strings.Repeat("long", 16)
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	for i := range s.pages {
		for k := range s.pages[i].Items {
			if it := &s.pages[i].Items[k]; it.Object == "graph:cues" {
				if b := it.Bounds(fixture.Family(t)).Box; b.Min.X < 0 || b.Max.X > s.pages[i].Width {
					t.Errorf("%+v runs off the page", b)
				}
			}
		}
	}
	text := Text(Options{Font: fixture.Family(t)}, in)
	for i := range in.Setup.Cues {
		if !strings.Contains(text, in.Setup.Cues[i].Name+" ") {
			t.Errorf("the text has no %s", in.Setup.Cues[i].Name)
		}
	}
	if n := len(itemsOf(s, "graph:cues")); n == 0 {
		t.Error("no graph is drawn")
	}
}

// The change of a stop is in text what it is on paper: also where it is longer than the stop and the name of the cue, and where it is struck.
func TestChangesUnderShortStops(t *testing.T) {
	in := cued([]float64{0}, 0, 1, func(int, float64) float64 { return 0 }, "ruth")
	for i, stop := range []float64{8, 4} {
		r := meter.CueReading{Reading: meter.Reading{Name: "desk", Stop: fixture.Number(stop)}}
		if i > 0 {
			r.Change = fixture.Number(-2)
		}
		r.Uncomputed = []plan.Uncomputed{fixture.Scrims}
		in.Cues.States[i].Readings = []meter.CueReading{r}
	}
	in.Cues.Curves[0].Uncomputed = []plan.Uncomputed{fixture.Scrims}
	low, high := in.Cues.States[1].Readings[0].Reading, in.Cues.States[0].Readings[0].Reading
	low.Over, high.Over = fixture.Number(1), fixture.Number(3)
	fire := plan.Play{Kind: "fire", Rate: 4}
	in.Played = []meter.Played{{Numbered: "1 day", Play: &fire, High: 1, Readings: []meter.PlayedReading{{Low: low, Mean: low, High: high}}}, {Numbered: "3 lamp", Play: &fire, High: 1}}
	text := Text(Options{Font: fixture.Family(t)}, in)
	for _, want := range []string{"  desk    ✗ T8       ✗ T4\n", "✗ –  ✗ –  −2.0\n", "The lines are without scrims of 2 soft", "3 lamp plays fire from off to 100 %, 4 /s; no reading shows it\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text has no %q:\n%s", want, text)
		}
	}
	_, played, _ := strings.Cut(text, "LIGHTS THAT PLAY\n")
	if played, _, _ = strings.Cut(played, "\n\n"); !strings.Contains(played, "Struck figures are without scrims") || strings.Count(played, "lowest") != 1 {
		t.Errorf("it is not said what lights that play are without, or one that no reading shows has heads:\n%s", played)
	}
}

// A stop and the name of a cue that are shorter than the change below them have its room.
func TestAShortStopHasRoomForItsChange(t *testing.T) {
	in := cued([]float64{0}, 0, 1, nil)
	for i, stop := range []float64{8, 4} {
		r := meter.CueReading{Reading: meter.Reading{Name: "desk", Stop: fixture.Number(stop)}}
		if i > 0 {
			r.Change = fixture.Number(-2)
		}
		in.Cues.States[i].Readings = []meter.CueReading{r}
	}
	if text := Text(Options{Font: fixture.Family(t)}, in); !strings.Contains(text, "  desk      T8       T4\n"+strings.Repeat(" ", 13)+"–  –  −2.0\n") {
		t.Errorf("the change does not stand under its stop:\n%s", text)
	}
}
