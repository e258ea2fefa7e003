package kit

import (
	"math"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// Shade is what hangs around a bulb: a round side that shines through, open above and below.
type Shade struct {
	Top           float64 `json:"top"`            // diameter of its opening above, m
	Bottom        float64 `json:"bottom"`         // of that below, m
	Height        float64 `json:"height"`         // m
	Transmittance float64 `json:"transmittance"`  // share of the light on its side that comes out of it, scattered, 0 to 1
	Reflectance   float64 `json:"reflectance"`    // share that its inside throws back, 0 to 1
	Aims          bool    `json:"aims,omitempty"` // it turns with the aim, its bottom foremost; else its top hangs above
}

// The least and the greatest shade, m: from a candle's clip to a drum over a table.
const (
	leastShade    = 0.02
	greatestShade = 3
)

// shadeReader reads a shade.
func shadeReader() source.Reader[*Shade] {
	type s = Shade
	size := func(what string) source.Reader[float64] { return length(what, "0.3", leastShade, greatestShade) }
	shape := &source.Shape[Shade]{Name: "shade", Doc: "A round shade, open above and below.", Fields: []source.Field[Shade]{
		required(field("top", size("a diameter"), func(v *s) *float64 { return &v.Top },
			"Diameter of the opening above.")),
		required(field("bottom", size("a diameter"), func(v *s) *float64 { return &v.Bottom },
			"Diameter of the opening below.")),
		required(field("height", size("a height"), func(v *s) *float64 { return &v.Height },
			"From the one to the other.")),
		required(field("transmittance", share("a transmittance", "35 %"), func(v *s) *float64 { return &v.Transmittance },
			"Share of the light on its side that comes out of it, scattered.")),
		required(field("reflectance", share("a reflectance", "50 %"), func(v *s) *float64 { return &v.Reflectance },
			"Share that its inside throws back, scattered.")),
		withDefault(field("aims", source.Bool("aims"), func(v *s) *bool { return &v.Aims },
			"Whether it turns with the aim, its bottom foremost, as that of a desk lamp does."), "its top hangs above"),
	}}
	return source.Reader[*Shade]{What: "a shade", Like: "{top: 0.2, bottom: 0.3, height: 0.22, transmittance: 35 %, reflectance: 50 %}", Schema: shape.Schema,
		Read: func(n *source.Node, c *source.Context) (*Shade, bool) {
			if n.Kind != source.Map {
				c.Error(n, source.CodeWrongType, "write it like {top: 0.2, bottom: 0.3, height: 0.22, transmittance: 35 %, reflectance: 50 %}", "a shade belongs here, not %s", n.Kind)
				return nil, false
			}
			v := &Shade{}
			clean := readsWithoutError(c, func(c *source.Context) { shape.Read(v, n, c) })
			return v, clean
		}}
}

// around is the light of a bulb of a diameter within the shade, and the share of it that leaves. A bulb that is wider
// than the shade is taken to be as wide as that lets it.
func (s *Shade) around(bulb float64) (d photometry.Distribution, opening photometry.Opening, share float64) {
	top, bottom := s.Top, s.Bottom
	if s.Aims { // what photometry calls its top lies toward the aim
		top, bottom = bottom, top
	}
	light, share := photometry.NewShade(photometry.ShadeForm{
		Top: top, Bottom: bottom, Height: s.Height, Bulb: min(bulb, widestBulb*s.room()),
		Reflectance: s.Reflectance, Transmittance: s.Transmittance,
	})
	return light, photometry.Opening{Form: photometry.Lampshade, Width: max(s.Top, s.Bottom), Height: s.Height}, share
}

// room is how wide a ball in its middle is that touches the side, or reaches to the openings, m.
func (s *Shade) room() float64 {
	slant := math.Hypot(s.Height, (s.Bottom-s.Top)/2)
	return min(s.Height, (s.Top+s.Bottom)/2*s.Height/slant)
}

// widestBulb is the share of that which a bulb may take.
const widestBulb = 0.8

// makesLight says whether the shade sends back more than falls on it.
func (s *Shade) makesLight() bool { return s.Reflectance+s.Transmittance > 1 }
