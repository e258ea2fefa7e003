package polar_test

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/render/font"
	"scrimshaw/render/polar"
	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
)

func family(t testing.TB) *font.Family {
	t.Helper()
	f, err := font.Default()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// charts are lights of every kind that a diagram must hold.
func charts(t testing.TB) map[string]polar.Chart {
	t.Helper()
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 90, 50)
	bat, _, err := photometry.NewTable(photometry.Nodes{
		Horizontal: []float64{0, 90, 180, 270, 360}, Vertical: []float64{0, 40, 60, 90, 180},
		Candela: [][]float64{{100, 300, 200, 0, 50}, {100, 150, 80, 0, 50}, {100, 300, 200, 0, 50}, {100, 150, 80, 0, 50}, {100, 300, 200, 0, 50}},
	})
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]polar.Chart{}
	for name, s := range map[string]photometry.Source{
		"cosine": photometry.FromCandela(1000, photometry.Cosine{}, photometry.Opening{}), "pencil": photometry.FromCandela(1.7e6, photometry.NewLobe(2, 5), photometry.Opening{}),
		"uniform": photometry.FromLumens(4, photometry.Uniform{}, photometry.Opening{}), "grid": photometry.FromLumens(2500, grid, photometry.Opening{}),
		"bat": photometry.FromLumens(900, bat, photometry.Opening{}), "beam": photometry.FromCandela(8000, photometry.NewLobe(24, 40), photometry.Opening{}), "cone": photometry.FromCandela(0.003, cone{}, photometry.Opening{}),
	} {
		all[name] = polar.Chart{
			Title: name + strings.Repeat(", with words that run on", 6), Subtitle: name + ".ies", Source: s,
			Facts: [][2]string{{"flux", "1000 lm"}, {"peak", "1000 cd"}, {"beam", "60° at C0 and, what is more, much less than that at C90"}},
			Notes: []string{"A note that is so long that it has to be broken into two lines before it is read to its end, whatever the size of its words."},
		}
	}
	return all
}

// Everything lies on the paper, and no two words lie on each other.
func TestNothingLeavesThePaperOrCollides(t *testing.T) {
	m := family(t)
	for name, c := range charts(t) {
		page := polar.Draw(c, m)
		var boxes []r2.Box
		var words []string
		for i := range page.Items {
			it := &page.Items[i]
			b := it.Bounds(m).Box
			if b.Min.X < -1e-9 || b.Min.Y < -1e-9 || b.Max.X > page.Width+1e-9 || b.Max.Y > page.Height+1e-9 {
				t.Errorf("%s: a mark from %v to %v leaves the page of %g x %g", name, b.Min, b.Max, page.Width, page.Height)
			}
			if it.Text == nil {
				continue
			}
			if it.Text.Size*0.7 < 1.8 {
				t.Errorf("%s: %q is lettered %g mm high", name, it.Text.S, it.Text.Size*0.7)
			}
			for k, other := range boxes {
				if b.Min.X < other.Max.X && other.Min.X < b.Max.X && b.Min.Y < other.Max.Y && other.Min.Y < b.Max.Y {
					t.Errorf("%s: %q lies on %q", name, it.Text.S, words[k])
				}
			}
			boxes, words = append(boxes, b), append(words, it.Text.S)
		}
	}
}

// The curve lies where the intensity says: its distance from the middle over that of the outermost ring is
// the intensity over that ring's figure.
func TestCurveIsToScale(t *testing.T) {
	c := charts(t)["cosine"]
	page := polar.Draw(c, family(t))
	var curve *ink.Item
	for i := range page.Items {
		if it := &page.Items[i]; strings.HasPrefix(it.Object, "curve:") {
			curve = it
		}
	}
	if curve == nil {
		t.Fatal("no curve")
	}
	// Lambert's curve is a circle through the middle, whose diameter is the peak.
	var low, high r2.Vec
	low.Y = math.Inf(1)
	high.Y = math.Inf(-1)
	for _, s := range curve.Path {
		if p := s.P[0]; p.Y < low.Y {
			low = p
		}
		if p := s.P[0]; p.Y > high.Y {
			high = p
		}
	}
	middle, radius := r2.Scale(0.5, r2.Add(low, high)), (high.Y-low.Y)/2
	for _, s := range curve.Path {
		if d := r2.Norm(r2.Sub(s.P[0], middle)); !(math.Abs(d-radius) <= 0.02) {
			t.Fatalf("%v lies %.3f mm from the middle of a circle of %.3f", s.P[0], d, radius)
		}
	}
	if got := 2 * radius / 58; !(math.Abs(got-1) <= 1e-6) {
		t.Errorf("1000 cd reach %.4f of the ring of 1000 cd", got)
	}
}

// The same chart gives the same bytes, and they are whole XML with a sentence for each curve.
func TestDrawsTheSame(t *testing.T) {
	m := family(t)
	for name, c := range charts(t) {
		one, two := polar.Draw(c, m), polar.Draw(c, m)
		if !reflect.DeepEqual(one, two) {
			t.Errorf("%s: two pages of one chart differ", name)
		}
		var b bytes.Buffer
		if err := svg.Write(&b, ink.Document{Title: one.Title, Language: "en", Pages: []ink.Page{one}}, 0, svg.Options{Font: m}); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"Polar curve of luminous intensity", "Intensity in "} {
			if !strings.Contains(b.String(), want) {
				t.Errorf("%s: no %q in the drawing", name, want)
			}
		}
	}
}

func ExampleDraw() {
	f, err := font.Default()
	if err != nil {
		fmt.Println(err)
		return
	}
	s := photometry.FromCandela(5000, photometry.NewLobe(30, 50), photometry.Opening{})
	page := polar.Draw(polar.Chart{Title: "A lobe", Subtitle: "beam 30°, field 50°", Source: s}, f)
	fmt.Printf("%.0f mm wide\n", page.Width)
	// Output: 160 mm wide
}

// cone is the same light within 30 degrees of the axis and none outside.
type cone struct{}

func (c cone) Candela(dir r3.Vec) float64 { return c.At(math.Acos(-dir.Z)) }

func (c cone) At(t float64) float64 {
	if t > math.Pi/6 {
		return 0
	}
	return c.Peak()
}

func (cone) Peak() float64 { return 1 / (2 * math.Pi * (1 - math.Cos(math.Pi/6))) }
