package kit_test

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/testdata/published"
)

// once reads the catalogue, which nothing changes, for all tests.
var once = sync.OnceValues(kit.Shipped)

func shipped(t testing.TB) *kit.Catalogue {
	t.Helper()
	c, err := once()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// within fails unless got is want to an absolute tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.9g, want %.9g to %g", what, got, want, tolerance)
	}
}

// The catalogue holds what a small crew hires: the classes of units and the kinds of the rest.
func TestShippedIsComplete(t *testing.T) {
	c := shipped(t)
	drawn := map[term.Class]int{}
	for _, u := range c.Units {
		drawn[u.Class]++
	}
	for _, class := range []term.Class{term.Bare, term.Lensed, term.Projected, term.Panel, term.Linear, term.Lantern, term.Practical} {
		if drawn[class] == 0 {
			t.Errorf("no unit is %s", class)
		}
	}
	for what, n := range map[string][2]int{
		"units": {len(c.Units), 40}, "modifiers": {len(c.Modifiers), 40}, "gels": {len(c.Gels), 40},
		"cloth": {len(c.Cloth), 10}, "materials": {len(c.Materials), 10}, "sensors": {len(c.Sensors), 5},
		"stands": {len(c.Stands), 5}, "bulbs": {len(c.Bulbs), 3}, "grip": {len(c.Grip), 30}, "items": {len(c.Items), 60},
	} {
		if n[0] < n[1] {
			t.Errorf("%d %s, want %d or more", n[0], what, n[1])
		}
	}
	for _, name := range []string{"led-point-600-bicolour", "led-point-150-daylight", "fresnel-tungsten-650", "open-tungsten-1000", "discharge-1200"} {
		if c.Unit(name) == nil {
			t.Errorf("no unit %s", name)
		}
	}
}

// every calls f with each unit and each modifier that goes on it.
func every(t *testing.T, c *kit.Catalogue, f func(u *kit.Unit, modifier string, h kit.Head)) {
	t.Helper()
	for _, u := range c.Units {
		fitting := c.Fitting(u)
		if len(fitting) == 0 {
			t.Errorf("%s cannot be used at all", u.Name)
		}
		for _, m := range fitting {
			log := &source.Log{}
			h, ok := c.Head(kit.Choice{Unit: u.Name, Modifier: m}, log)
			if !ok || len(log.All()) > 0 {
				t.Errorf("%s with %s: %v", u.Name, m, log.All())
				continue
			}
			f(u, m, h)
		}
	}
}

// The flux of a head is the integral of its intensity: by quadrature, once for each of the
// distributions that occur.
func TestFluxIsTheIntegralOfIntensity(t *testing.T) {
	c := shipped(t)
	seen := map[string]bool{}
	every(t, c, func(u *kit.Unit, modifier string, h kit.Head) {
		d := h.Source.Distribution
		key := fmt.Sprintf("%T %.6g", d, photometry.Peak(d))
		if seen[key] {
			return
		}
		seen[key] = true
		within(t, u.Name+" with "+modifier, reference.SphereIntegral(d), 1, 1e-4)
	})
	if len(seen) < 8 {
		t.Errorf("only %d distributions in the whole catalogue", len(seen))
	}
}

// What the data says at its distance is what comes out, at each focus that it says it for.
func TestStatedLuxComesOut(t *testing.T) {
	c := shipped(t)
	stated := 0
	for _, u := range c.Units {
		for _, o := range u.Outputs {
			if o.Output.Lux == 0 {
				continue
			}
			stated++
			h, _ := c.Head(kit.Choice{Unit: u.Name, Modifier: orBare(o.Modifier), Focus: &o.Focus}, &source.Log{})
			lux := h.Source.Peak() / (o.Output.Distance * o.Output.Distance)
			within(t, u.Name+" "+o.Modifier, lux, o.Output.Lux, 1e-9*o.Output.Lux)
			beam, _ := photometry.BeamAngle(h.Source.Distribution)
			within(t, u.Name+" beam", beam, o.Output.Beam, 1e-9)
			field, _ := photometry.FieldAngle(h.Source.Distribution)
			within(t, u.Name+" field", field, o.Output.Field, 1e-9)
		}
	}
	if stated < 30 {
		t.Errorf("only %d outputs are stated in lux", stated)
	}
}

func orBare(modifier string) string {
	if modifier == "" {
		return kit.Unmodified
	}
	return modifier
}

// Every published figure of a gel, cloth, material or gate is what the catalogue holds.
func TestCatalogueHoldsPublishedValues(t *testing.T) {
	c := shipped(t)
	for _, row := range published.Read(t, "gels.txt") {
		name := row.Label
		for _, v := range row.In {
			name += fmt.Sprint(" ", v)
		}
		switch {
		case strings.HasPrefix(name, "efficacy"): // TestEfficacyIsPlausible
		case strings.HasPrefix(name, "nd printed"):
			within(t, name, c.Gel(fmt.Sprint("ND ", row.In[0])).Printed, row.Out[0], 1e-12)
		case strings.HasPrefix(name, "nd"):
			g := c.Gel(name)
			within(t, name, g.Transmittance, row.Out[0], 5e-5)
			within(t, name+" exactly", g.Transmittance, math.Pow(10, -row.In[0]), 1e-9)
		case c.Gel(name) != nil:
			within(t, name, c.Gel(name).Mired, row.Out[0], 5e-5)
		case c.ClothOf(name) != nil:
			cl := c.ClothOf(name)
			within(t, name, -math.Log2(cl.Direct+cl.Diffuse), row.Out[0], 5e-4)
		case c.Sensor(name) != nil:
			within(t, name+" width", c.Sensor(name).Width, row.Out[0], 0)
			within(t, name+" height", c.Sensor(name).Height, row.Out[1], 0)
		case c.Material(name) != nil:
			checkMaterial(t, c.Material(name), row.Out)
		default:
			t.Errorf("the catalogue does not hold %q", name)
		}
	}
}

// checkMaterial holds a glass to its transmittance, a surface to a reflectance or a range of it.
func checkMaterial(t *testing.T, m *kit.Material, want []float64) {
	t.Helper()
	switch {
	case m.Transmittance > 0:
		within(t, m.Name, m.Transmittance, want[0], 0)
	case m.Reflectance < want[0] || m.Reflectance > want[len(want)-1]:
		t.Errorf("%s reflects %g, want %v", m.Name, m.Reflectance, want)
	}
}

func TestCatalogueAgreesWithPublishedMireds(t *testing.T) {
	c := shipped(t)
	for _, row := range published.Read(t, "colour.txt", "gel") {
		found := false
		for _, g := range c.Gels {
			if math.Abs(g.Mired-row.In[1]) > 0.005 {
				continue
			}
			found = true
			got := colour.ThroughGels(colour.White{Kelvin: row.In[0]}, []colour.Filter{g.Filter()})
			within(t, g.Name, got.White.Kelvin, row.Out[0], 0.5)
		}
		if !found {
			t.Errorf("no gel shifts by %g mired", row.In[1])
		}
	}
}

// A cloth's direct and diffuse parts together cost its stops, and no surface makes light.
func TestClothsAndMaterials(t *testing.T) {
	c := shipped(t)
	for _, cl := range c.Cloth {
		if sum := cl.Direct + cl.Diffuse + cl.Reflect; sum > 1 {
			t.Errorf("%s makes light: %g", cl.Name, sum)
		}
	}
	for _, m := range c.Materials {
		if sum := m.Reflectance + m.Transmittance; sum > 0.99 {
			t.Errorf("%s makes light: %g", m.Name, sum)
		}
		rgb := m.Colour()
		within(t, m.Name+" reflectance under D65", rgb.Times(colour.FromXY(colour.D65(), 1)).Y(), m.Reflectance, 1e-12)
		for _, v := range rgb {
			if v < 0 || v > 0.98 {
				t.Errorf("%s has a channel of %.3f, want 0 to 0.98", m.Name, v)
			}
		}
	}
}

// Strong colours lie inside AP1 and pass in no channel more than falls on them.
func TestStrongColoursArePossible(t *testing.T) {
	for _, g := range shipped(t).Gels {
		if g.XY == nil {
			continue
		}
		factor, clamped := colour.ChannelFactors(*g.XY, colour.EqualEnergy(), g.Transmittance)
		if clamped {
			t.Errorf("%s lies outside AP1", g.Name)
		}
		for i, v := range factor {
			if v > 1 {
				t.Errorf("%s passes %.3f of channel %d", g.Name, v, i)
			}
		}
	}
}
