package meter

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
)

// judged is what a camera of a range makes of a face whose two sides have some light, whose skin returns a share of it, beside what else is
// in its picture.
func judged(hold lens.Range, skin, key, fill float64, p Picture) Picture {
	people := []plan.Person{person("bo", r2.Vec{}, r2.Vec{Y: 1}), person("ada", r2.Vec{X: 1}, r2.Vec{Y: 1}), person("cy", r2.Vec{X: 2}, r2.Vec{Y: 1}), person("di", r2.Vec{X: 3}, r2.Vec{Y: 1})}
	people[1].Skin, people[3].Skin = skin, skin
	s := &plan.Setup{People: people, Cameras: []plan.Camera{{Name: "A", Exposure: exposure}}}
	sees := []View{{Camera: "B"}, {Camera: "A"}}
	set := Set{Faces: []Face{{Person: "bo", Views: sees[:1]}, {Person: "nobody", Views: sees}, {Person: "ada", Views: sees}, {Person: "cy", Views: sees}, {Person: "di", Views: sees}},
		Readings: []Reading{{Name: "ada.key", Lux: &key}, {Name: "ada.fill", Lux: &fill}, {Name: "di.key"}}}
	p.Camera, p.Range = "A", hold
	p.Judge(s, &set)
	return p
}

// beyond are the words of what a picture does not hold.
func (p *Picture) beyond() (all []string) {
	for i := range p.Beyond {
		b := &p.Beyond[i]
		word := "clips"
		if b.Sinks {
			word = "sinks"
		}
		all = append(all, fmt.Sprintf("%s%s%s %s: %s", b.Person, b.Light, b.What, word, b.Words()))
	}
	return all
}

// The side of a face lies over the working stop by log2 of its light by 125 lx, and by that of its skin by 0.18 over grey. What lies as far
// from it as the camera holds is held; what is dark sinks where it says how far down it holds.
func TestFacesBeyondARange(t *testing.T) {
	both, up, down := lens.Range{Over: 3, Under: 4}, lens.Range{Over: 3}, lens.Range{Under: 4}
	const stop = 125.0
	for _, c := range []struct {
		hold            lens.Range
		skin, key, fill float64
		want            []string
	}{
		{both, 0.36, stop * 4, stop / 32, nil},
		{both, 0.36, stop * 4.2, stop / 33, []string{"adathe key side of ada clips: 3.1 stops over grey", "adathe fill side of ada sinks: 4.0 stops under grey"}},
		{both, 0.36, stop, 0, []string{"adathe fill side of ada sinks: dark"}},
		{both, 0.09, stop * 12, stop / 6, nil},
		{both, 0.09, stop * 17, stop / 9, []string{"adathe key side of ada clips: 3.1 stops over grey", "adathe fill side of ada sinks: 4.2 stops under grey"}},
		{up, 0.36, stop * 9, 0, []string{"adathe key side of ada clips: 4.2 stops over grey"}},
		{down, 0.36, stop * 9, 0, []string{"adathe fill side of ada sinks: dark"}},
		{lens.Range{}, 0.36, stop * 900, 0, nil},
	} {
		got := judged(c.hold, c.skin, c.key, c.fill, Picture{})
		unjudged := []string{"cy"} // whose skin nothing says
		if !c.hold.Known() {
			unjudged = nil
		}
		if !slices.Equal(got.beyond(), c.want) || !slices.Equal(got.Unjudged, unjudged) {
			t.Errorf("%+v: %q, want %q; not judged %q", c, got.beyond(), c.want, got.Unjudged)
		}
	}
	if got := judged(both, 0, stop*900, stop, Picture{}); len(got.Beyond) != 0 || !slices.Equal(got.Unjudged, []string{"ada", "cy", "di"}) {
		t.Errorf("a face without a skin is judged: %+v", got)
	}
	p := Picture{Camera: "gone", Range: both}
	p.Judge(&plan.Setup{People: []plan.Person{person("ada", r2.Vec{}, r2.Vec{Y: 1})}}, &Set{Faces: []Face{{Person: "ada", Views: []View{{Camera: "gone"}}}}})
	if len(p.Beyond)+len(p.Unjudged) != 0 {
		t.Errorf("a camera that is not there judges: %+v", p)
	}
}

// Lamps and surfaces are judged by the range alone: a lamp by its mean, a surface by the shares of it that the study found beyond.
func TestPicturesBeyondARange(t *testing.T) {
	p := Picture{Lamps: []LampSeen{{Light: "a", Numbered: "1 a", Over: stops(3.04)}, {Light: "b", Numbered: "2 b", Over: stops(3), Share: 0.1}, {Light: "c", Numbered: "3 c"},
		{Light: "d", Numbered: "4 d", Over: stops(-4.26), Share: 0.02}, {Light: "e", Numbered: "5 e", Over: stops(-4)}},
		Surfaces: []Surface{{Name: "den.top", Most: stops(5), Least: stops(-6), Clipped: 0.25, Sunk: 0.03}, {Name: "den.left", Most: stops(9)}, {Name: "rug", Sunk: 0.5}}}
	got := judged(lens.Range{Over: 3, Under: 4}, 0, 1, 1, p)
	want := []string{"a1 a clips: 3.0 stops over grey", "d4 d sinks: 4.3 stops under grey, 2 % of the frame", "den.top clips: 5.0 stops over grey, 25 % of the frame",
		"den.top sinks: 6.0 stops under grey, 3 % of the frame", "rug sinks: dark, 50 % of the frame"}
	if !slices.Equal(got.beyond(), want) {
		t.Errorf("got %q, want %q", got.beyond(), want)
	}
}

// What returns a share of the light lies over grey by its share of 0.18, in the light of each side; in the dark it lies nowhere. The light
// about a face is steady to the ratio of its most to its least.
func TestTonesAndSteadiness(t *testing.T) {
	lit, dark := &Reading{Over: stops(1.5)}, &Reading{}
	tone := toneOf(lit, dark, 0.36)
	near(t, "twice grey", tone.Key, 2.5)
	if tone.Fill != nil || toneOf(lit, lit, 0) != nil {
		t.Errorf("what is dark is %v, and what returns nothing %+v", *tone.Fill, toneOf(lit, lit, 0))
	}
	near(t, "black cloth", toneOf(lit, lit, 0.045).Fill, -0.5)
	near(t, "steady", SteadinessOf([]float64{50, 50}), 0)
	near(t, "one stop", SteadinessOf([]float64{60, 50, 100, 80}), 1)
	near(t, "of little light", SteadinessOf([]float64{minLight, 8 * minLight}), 3)
	for _, none := range [][]float64{nil, {1, 0}, {1, 0.99 * minLight}, {math.Inf(1), 1}} {
		if v := SteadinessOf(none); v != nil {
			t.Errorf("%v is steady to %v", none, *v)
		}
	}
	s := &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{}, r2.Vec{Y: 1})}, Lights: []plan.Light{bulb("a", plan.AtHeight(r2.Vec{Y: 2.1}, 1.6), 1000, white)}}
	s.People[0].Skin, s.People[0].Clothes = 0.36, 0.09
	set := read(t, s)
	face := set.FaceOf("ines") // 250 lx square to the nose, so that each side has 1/sqrt 2 of it
	near(t, "skin", face.Skin.Key, 1.5)
	near(t, "clothes", face.Clothes.Fill, -0.5)
}
