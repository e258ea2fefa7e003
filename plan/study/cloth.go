package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// Cloth is what the cloth of a frame or a net does to the light of a set-up.
type Cloth struct {
	Grip    string
	Lost    float64 // stops that it takes from light straight through it, scattered light with it
	HotSpot float64 // stops by which the place that gets most is over the mean of the side that the lamps light
	Lit     bool    // whether a lamp lights it: else there is no hot spot
}

// clothPoints is how many places of a cloth are looked at, each way.
const clothPoints = 9

// Cloths says of every cloth on a frame or a net what it takes and how unevenly it is lit by the lamps themselves.
func (s *Study) Cloths() []Cloth {
	var all []Cloth
	at := s.World.QuickEvaluator(light.Emitters(s.Setup), s.Levels)
	for i := range s.Setup.Grip {
		g := &s.Setup.Grip[i]
		if g.Kind != term.Frame && g.Kind != term.Net || len(g.IDs) == 0 {
			continue
		}
		skin := sheetSkin(&s.Setup.Set, g.IDs[0])
		if skin == nil {
			continue // without cloth
		}
		c := Cloth{Grip: g.Name, Lost: -math.Log2(skin.Direct.Y() + skin.Diffuse.Y())}
		front, most := litSide(g, g.Frame.Axis, at)
		if back, mostBehind := litSide(g, r3.Scale(-1, g.Frame.Axis), at); back > front {
			front, most = back, mostBehind
		}
		if c.Lit = front > 0; c.Lit {
			c.HotSpot = math.Log2(most / front)
		}
		all = append(all, c)
	}
	return all
}

// sheetSkin is the front of a sheet of a set, or nil where it has none of that identity.
func sheetSkin(s *solid.Set, id solid.ID) *solid.Skin {
	for i := range s.Sheets {
		if s.Sheets[i].ID == id {
			return &s.Sheets[i].Front
		}
	}
	return nil
}

// litSide is the mean and the most of the light on one side of a cloth, lx. Of a disc nothing is asked beside it.
func litSide(g *plan.Grip, normal r3.Vec, at func(light.Receptor) float64) (mean, most float64) {
	asked := 0.0
	for k := range clothPoints * clothPoints {
		x, y := (float64(k%clothPoints)+0.5)/clothPoints-0.5, (float64(k/clothPoints)+0.5)/clothPoints-0.5
		if g.Round() && math.Hypot(x, y) > 0.5 {
			continue
		}
		place := r3.Add(g.Frame.At, r3.Add(r3.Scale(x*g.Size[0], g.Frame.Right), r3.Scale(y*g.Size[1], g.Frame.Up())))
		lux := at(light.Receptor{At: place, Axis: normal})
		mean += lux
		most = max(most, lux)
		asked++
	}
	return mean / asked, most
}
