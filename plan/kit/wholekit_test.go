package kit_test

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/testdata/published"
)

// lampClass is a unit's class in the tables of what is met on set: what makes the light, and how it leaves the head.
func lampClass(u *kit.Unit) string {
	how := "soft"
	switch {
	case u.Technology == term.LED && u.Class == term.Bare && strings.HasSuffix(u.Name, "colour") && !strings.HasSuffix(u.Name, "bicolour"):
		how = "colour point"
	case u.Technology == term.LED && u.Class == term.Bare:
		how = "point"
	case u.Technology == term.LED && (u.Class == term.Lensed || u.Class == term.Projected):
		how = "lensed"
	case u.Class == term.Projected:
		how = "profile"
	case u.Class == term.Bare, u.Front == "lens-set": // its reflector does the work
		how = "open"
	case u.Class == term.Lensed:
		how = "lensed"
	}
	return string(u.Technology) + " " + how
}

// hired are the units that a rental house has: all but those of the set.
func hired(c *kit.Catalogue) (all []*kit.Unit) {
	for _, u := range c.Units {
		if u.Bulb == "" {
			all = append(all, u)
		}
	}
	return all
}

// between fails unless got is within the bounds of a row.
func between(t *testing.T, what string, got float64, bounds []float64) {
	t.Helper()
	if !(got >= bounds[0] && got <= bounds[1]) {
		t.Errorf("%s is %.4g, want %g to %g", what, got, bounds[0], bounds[1])
	}
}

// Each head gives at 3 m what heads of its class give, and none is without a row.
func TestLuxAtThreeMetres(t *testing.T) {
	c := shipped(t)
	told := map[string]bool{}
	for _, row := range published.Read(t, "lux.txt") {
		words := strings.Fields(row.Label)
		if words[0] == "draw" || words[0] == "mass" {
			continue
		}
		told[words[0]] = true
		ch := kit.Choice{Unit: words[0], Modifier: words[1]}
		if len(words) == 3 {
			ch.Focus = map[string]*float64{"spot": at(0), "flood": at(1)}[words[2]]
		}
		h := head(t, ch)
		if h.Zooms != (len(words) == 3) {
			t.Errorf("%s: zooms %v", row.Label, h.Zooms)
		}
		between(t, row.Label+" at 3 m, lx,", h.Source.AxisLux(3), row.Out)
	}
	for _, u := range hired(c) {
		if !told[u.Name] {
			t.Errorf("no row says what %s gives at 3 m", u.Name)
		}
	}
}

// No modifier adds flux: not to the head, and not to what it goes on; and no cells make the axis brighter.
func TestModifiersMakeNoLight(t *testing.T) {
	c := shipped(t)
	every(t, c, func(u *kit.Unit, modifier string, h kit.Head) {
		if share := h.Source.Flux / u.BareFlux(); !(share > 0.01 && share <= 1+1e-9) {
			t.Errorf("%s with %s sends out %.0f lm of %.0f", u.Name, modifier, h.Source.Flux, u.BareFlux())
		}
		under, cover, stacked := strings.Cut(modifier, " + ")
		if !stacked {
			return
		}
		below := head(t, kit.Choice{Unit: u.Name, Modifier: under})
		if h.Source.Flux > below.Source.Flux || strings.Contains(cover, "grid") && h.Source.Peak() > below.Source.Peak() ||
			strings.Contains(cover, "honeycomb") && h.Source.Peak() > below.Source.Peak() {
			t.Errorf("%s with %s gives %.0f lm and %.0f cd, without its cover %.0f lm and %.0f cd", u.Name, modifier, h.Source.Flux, h.Source.Peak(), below.Source.Flux, below.Source.Peak())
		}
	})
}

// Peak times the solid angle of the beam is the flux, but for what goes out between beam and field. A shade, which shines
// up and down, has no beam.
func TestPeakTimesBeamIsFlux(t *testing.T) {
	every(t, shipped(t), func(u *kit.Unit, modifier string, h kit.Head) {
		across, along := photometry.BeamAngle(h.Source.Distribution)
		if _, shaded := h.ShadeForm(); shaded || across != along {
			return
		}
		solid := 2 * math.Pi * (1 - math.Cos(across/2*math.Pi/180))
		between(t, u.Name+" with "+modifier+": flux over peak and beam", h.Source.Flux/(h.Source.Peak()*solid), []float64{0.95, 1.7})
	})
}

// Light, draw and mass stay within what lamps of a class have.
func TestHeadsArePlausible(t *testing.T) {
	bounds := func(file, label string) []float64 { return published.Read(t, file, label)[0].Out }
	for _, u := range shipped(t).Units {
		if u.Bulb != "" {
			between(t, u.Name+", lm/W,", u.Lumens/u.Watts, bounds("gels.txt", "efficacy "+string(u.Technology)+" bulb"))
			continue
		}
		class := lampClass(u)
		between(t, u.Name+", lm/W,", u.BareFlux()/u.Watts, bounds("gels.txt", "efficacy "+class))
		between(t, u.Name+", kg for 100 W,", u.Mass/u.Watts*100, bounds("lux.txt", "mass "+class))
		var nominal float64
		if _, err := fmt.Sscanf(u.Label, "%f W", &nominal); err == nil {
			between(t, u.Name+", draw over nominal,", u.Watts/nominal, bounds("lux.txt", "draw "+string(u.Technology)))
		}
	}
}

// A quote, a load list and a circuit plan find what they need.
func TestHiredUnitsSayWhatARentalDeskAsks(t *testing.T) {
	for _, u := range hired(shipped(t)) {
		switch {
		case u.Watts == 0, u.Mass == 0, u.Spigot == "", u.Inlet == "", u.Case == [3]float64{}, len(u.ComesWith) == 0, u.Body == [3]float64{}, u.Stand == "":
			t.Errorf("%s lacks a figure: %+v", u.Name, u.Rental)
		case u.Technology == term.Discharge && (u.Supply == 0 || u.Levels.Least < 0.5):
			t.Errorf("%s has no ballast, or one that dims to %g", u.Name, u.Levels.Least)
		case u.Technology == term.LED && u.Levels.Least == 0:
			t.Errorf("%s has no least level", u.Name)
		case u.Kelvin[0] < u.Kelvin[1] && len(u.ByWhite) == 0:
			t.Errorf("%s gives the same light at each of its whites", u.Name)
		}
		if amps, ok := u.Amps(kit.MainsHigh); !ok || !(math.Abs(amps*kit.MainsHigh*u.PowerFactor-u.Watts) <= 1e-9) {
			t.Errorf("%s draws %g A", u.Name, amps)
		}
	}
}

// Each head goes on the stand that it comes with, and with anything on its front there is a stand that carries it.
func TestEveryHeadFitsAStand(t *testing.T) {
	c := shipped(t)
	for _, u := range hired(c) {
		own := c.Stand(u.Stand)
		if h := head(t, kit.Choice{Unit: u.Name}); h.Mass > own.Load || !own.Takes(u.Spigot) {
			t.Errorf("%s of %g kg with a spigot of %s is too much for its %s", u.Name, h.Mass, u.Spigot, own.Name)
		}
	}
	every(t, c, func(u *kit.Unit, modifier string, h kit.Head) {
		if u.Bulb == "" && !slices.ContainsFunc(c.Stands, func(s *kit.Stand) bool { return h.Mass <= s.Load && s.Takes(u.Spigot) }) {
			t.Errorf("no stand carries %s with %s, %g kg", u.Name, modifier, h.Mass)
		}
	})
}

// From flood to spot the beam narrows and the peak rises, and the flux falls from that of the flood and never below that of the
// spot. Through a snoot more gets the narrower the beam is.
func TestZoomsKeepTheirFlux(t *testing.T) {
	c := shipped(t)
	zooms := 0
	every(t, c, func(u *kit.Unit, modifier string, h kit.Head) {
		if !h.Zooms || modifier == "snoot" {
			return
		}
		zooms++
		spot := head(t, kit.Choice{Unit: u.Name, Modifier: modifier, Focus: at(0)})
		before, beam := h, 180.0
		for step := 10; step >= 0; step-- {
			log := &source.Log{}
			now, ok := c.Head(kit.Choice{Unit: u.Name, Modifier: modifier, Focus: at(float64(step) / 10)}, log)
			angle, _ := photometry.BeamAngle(now.Source.Distribution)
			if !ok || len(log.All()) > 0 || now.Source.Flux > before.Source.Flux*(1+1e-9) || now.Source.Flux < spot.Source.Flux*(1-1e-9) ||
				now.Source.Peak() < before.Source.Peak()*(1-1e-9) || angle > beam+1e-9 {
				t.Errorf("%s with %s at %d: %.0f lm, %.0f cd, %.1f°; before %.0f lm, %.0f cd, %.1f°", u.Name, modifier, step,
					now.Source.Flux, now.Source.Peak(), angle, before.Source.Flux, before.Source.Peak(), beam)
			}
			before, beam = now, angle
		}
		stops := math.Log2(spot.Source.Peak() / h.Source.Peak())
		if modifier == kit.Unmodified && u.Class == term.Lensed && u.Technology != term.LED {
			between(t, u.Name+": stops from flood to spot", stops, []float64{2.6, 3.5})
		}
	})
	if zooms < 20 {
		t.Errorf("only %d heads zoom", zooms)
	}
}

// What is on the other shelves stays within what such things have: sizes are those that names say, a desk can tell all by their labels, masses
// of grip and the base of a lift are as in common practice, from memory, and the higher a lift goes the heavier it is.
func TestGripAndItemsArePlausible(t *testing.T) {
	c := shipped(t)
	labels := map[string]string{}
	label := func(name, said string) {
		if other := labels[said]; other != "" {
			t.Errorf("%s and %s are both a %s", other, name, said)
		}
		labels[said] = name
	}
	for _, g := range c.Grip {
		label(g.Name, g.Label)
		saysItsSize(t, g)
		between(t, g.Name+", kg over its pin, edge and face,", g.Mass/(0.05+0.1*(g.Width+g.Height)+1.5*g.Width*g.Height), []float64{0.15, 2})
	}
	var last *kit.Item
	for _, i := range lifts(c) {
		between(t, i.Name+", ground over height,", min(i.Ground[0], i.Ground[1])/i.Length, []float64{0.1, 0.5})
		between(t, i.Name+", load over mass,", i.Load/i.Mass, []float64{0.8, 2.5})
		if last != nil && i.Mass <= last.Mass {
			t.Errorf("%s goes higher than %s and is no heavier", i.Name, last.Name)
		}
		last = i
	}
	for _, i := range c.Items {
		label(i.Name, i.Label)
	}
	for _, s := range c.Stands {
		label(s.Name, s.Label)
	}
}

// lifts are those of the catalogue, the lowest first.
func lifts(c *kit.Catalogue) (all []*kit.Item) {
	for _, i := range c.Items {
		if i.Group == kit.LiftGroup {
			all = append(all, i)
		}
	}
	slices.SortFunc(all, func(a, b *kit.Item) int { return cmp.Compare(a.Length, b.Length) })
	return all
}

// sizeInName finds the centimetres that a name ends with.
var sizeInName = regexp.MustCompile(`-(\d+)(?:x(\d+))?$`)

// saysItsSize fails where a piece of grip is not as large as its name says. A floppy opens to twice that.
func saysItsSize(t *testing.T, g *kit.Grip) {
	t.Helper()
	m := sizeInName.FindStringSubmatch(g.Name)
	if m == nil || strings.HasPrefix(g.Name, "floppy") {
		return
	}
	for k, v := range []float64{g.Width, g.Height} {
		if want, err := strconv.Atoi(m[k+1]); err == nil && !(math.Abs(100*v-float64(want)) <= 1e-9) {
			t.Errorf("%s is %g m × %g m", g.Name, g.Width, g.Height)
		}
	}
}
