package study_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// darkReading is the light, lx, below which a reading is not held to the truth.
const darkReading = 0.5

// traced is what is known of a reading.
type traced struct {
	name                     string
	direct, reflected, total truth.Part
}

// receptorsOf are the requests as the tracer knows them.
func receptorsOf(requests []meter.Request) []truth.Receptor {
	all := make([]truth.Receptor, len(requests))
	for i := range requests {
		r := &requests[i].Receptor
		all[i] = truth.Receptor{At: r.At, Axis: r.Axis, Skip: r.Skip}
		switch r.Response {
		case light.Dome:
			all[i].Response = truth.Dome
		case light.Radiance:
			all[i].Response = truth.Spot
		}
	}
	return all
}

// trace finds the truth of the readings of a set-up that are worth comparing.
func trace(s *plan.Setup, o truth.Options) (all []traced) {
	o.Dark = darkReading
	var requests []meter.Request
	for _, order := range meter.Requests(s) {
		if !throughOneself(s, &order) {
			requests = append(requests, order)
		}
	}
	for i, v := range truth.Trace(s, receptorsOf(requests), o) {
		if v.Total.Y >= darkReading {
			all = append(all, traced{requests[i].Name, v.Direct, v.Reflected, v.Total})
		}
	}
	return all
}

// throughOneself says whether a reading is of someone who lies, and looks down through their own body at what
// that covers: it is dark there, and means nothing.
func throughOneself(s *plan.Setup, o *meter.Request) bool {
	for i := range s.People {
		if p := &s.People[i]; p.Name == o.Person {
			return p.Pose == "lying" && o.Receptor.Axis.Z < -0.1
		}
	}
	return false
}

// parts are the light at receptor i that comes from lamps, straight or by a mirror, and the reflected.
func parts(b *light.Basis, levels light.Levels, i int) (direct, reflected colour.RGB) {
	_, shares := b.Point(i, levels)
	for k, share := range shares {
		if b.Terms[k].Path.Straight() {
			direct = direct.Add(share)
		} else {
			reflected = reflected.Add(share)
		}
	}
	return direct, reflected
}

// miss is how far a reading is off the truth beyond noise: shares of the true total, and kelvin.
type miss struct {
	scene, name              string
	direct, reflected, total float64
	kelvin                   float64
	stated, noise            float64 // the errors that the reading and the tracer state, shares of the true total
	off                      float64 // how far the reading is off, noise and all
	words                    string
}

// beyond is how far a figure is off by more than twice the standard error.
func beyond(got, want, se float64) float64 { return max(0, math.Abs(got-want)-2*se) }

// misses compares the readings of a study with what was traced.
func misses(scene string, lit *study.Study, truths []traced) (all []miss) {
	index := map[string]int{}
	for i := range lit.Requests {
		index[lit.Requests[i].Name] = i
	}
	for i := range truths {
		t := &truths[i]
		d, r := parts(lit.Basis, lit.Levels, index[t.name])
		m := miss{scene: scene, name: t.name,
			direct: beyond(d.Y(), t.direct.Y, t.direct.YSE) / t.total.Y, reflected: beyond(r.Y(), t.reflected.Y, t.reflected.YSE) / t.total.Y,
			total: beyond(d.Y()+r.Y(), t.total.Y, t.total.YSE) / t.total.Y}
		m.kelvin = kelvinOff(d.Add(r), t.total)
		m.stated, m.noise = lit.Basis.Error(index[t.name], lit.Levels)/t.total.Y, t.total.YSE/t.total.Y
		m.off = math.Abs(d.Y()+r.Y()-t.total.Y) / t.total.Y
		m.words = fmt.Sprintf("direct %.3f for %.3f ± %.3f, reflected %.3f for %.3f ± %.3f", d.Y(), t.direct.Y, t.direct.YSE, r.Y(), t.reflected.Y, t.reflected.YSE)
		all = append(all, m)
	}
	return all
}

// kelvinOff is how far the temperature of a colour is off beyond noise, K; nought where it has none. Noise is
// how far the temperature goes where one channel is off by twice its standard error, over all three.
func kelvinOff(got colour.RGB, want truth.Part) float64 {
	kelvin, duv := colour.CCT(colour.XY(want.RGB))
	if math.Abs(duv) > 0.05 {
		return 0
	}
	noise := 0.0
	for c := range want.RGB {
		shifted := want.RGB
		shifted[c] += 2 * want.SE[c]
		noise = hypot(noise, kelvinOf(shifted)-kelvin)
	}
	return max(0, math.Abs(kelvinOf(got)-kelvin)-noise)
}

func kelvinOf(c colour.RGB) float64 {
	kelvin, _ := colour.CCT(colour.XY(c))
	return kelvin
}

func hypot(a, b float64) float64 { return math.Sqrt(a*a + b*b) }

// report prints the spread of misses, and the worst.
func report(t *testing.T, title string, all []miss, worst int) {
	if len(all) == 0 {
		return
	}
	row := func(what string, of func(m *miss) float64, scale float64, unit string) {
		values := make([]float64, len(all))
		for i := range all {
			values[i] = scale * of(&all[i])
		}
		slices.Sort(values)
		at := func(q float64) float64 { return values[int(q*float64(len(values)-1))] }
		t.Logf("%-20s %-9s median %7.3f %s, 95th %7.3f, worst %7.3f  (%d readings)", title, what, at(0.5), unit, at(0.95), at(1), len(values))
	}
	row("total", func(m *miss) float64 { return m.total }, 100, "%")
	row("direct", func(m *miss) float64 { return m.direct }, 100, "%")
	row("reflected", func(m *miss) float64 { return m.reflected }, 100, "%")
	row("colour", func(m *miss) float64 { return m.kelvin }, 1, "K")
	for _, m := range worstScenes(all, worst) {
		t.Logf("    %s %s: %.2f %%: %s", m.scene, m.name, 100*m.total, m.words)
	}
}

// worstScenes are the worst readings of the scenes that have the worst.
func worstScenes(all []miss, most int) (some []miss) {
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b miss) int { return cmp.Compare(b.total, a.total) })
	for _, m := range sorted {
		named := slices.ContainsFunc(some, func(o miss) bool { return o.scene == m.scene })
		if !named && len(some) < most {
			some = append(some, m)
		}
	}
	return some
}
