package meter

import "scrimshaw/plan/colour"

type jsonStandIn struct {
	Light   string        `json:"light"`
	For     string        `json:"standsFor"` // as it is worded
	Unknown *string       `json:"unknown"`   // why its colour is compared with nothing
	Faces   []jsonPassing `json:"faces"`
}

// jsonPassing is how a light passes for something at a face; gap, setting and direction are null where they have no meaning.
type jsonPassing struct {
	Person  string      `json:"person"`
	Share   float64     `json:"share"` // share of the light on both sides of the face, 0 to 1
	Gap     *jsonGap    `json:"gap"`
	Whites  []jsonWhite `json:"whites"`  // of the light and of what it passes for, as they come there; none where there is no gap
	Gels    *jsonCure   `json:"gels"`    // null where none help
	Setting *jsonCure   `json:"setting"` // null where the unit has none that helps
	Way     *jsonWay    `json:"way"`
	Passes  bool        `json:"passes"`

	Uncomputed []jsonKey `json:"uncomputed"`
}

type jsonGap struct {
	Mired float64 `json:"mired"` // mireds, plus is warmer
	Duv   float64 `json:"duv"`   // CIE 1960 u v, plus is greener
}

type jsonWhite struct {
	Kelvin float64 `json:"kelvin"` // K, of the nearest Planckian
	Duv    float64 `json:"duv"`    // CIE 1960 u v
}

type jsonCure struct {
	Off    []string `json:"off"`    // gels that come off
	Gels   []string `json:"gels"`   // that go on
	Kelvin *float64 `json:"kelvin"` // of a setting
	Duv    *float64 `json:"duv"`    // CIE 1960 u v
	Left   *jsonGap `json:"left"`
	Stops  float64  `json:"stops"` // that it costs
}

type jsonWay struct {
	Angle  float64  `json:"angle"`    // degrees
	Higher float64  `json:"higher"`   // degrees
	Right  *float64 `json:"ownRight"` // degrees
	Wide   float64  `json:"width"`    // how wide it looks, degrees
	For    float64  `json:"widthFor"` // how wide what it passes for looks, degrees
}

func (s *StandIn) json() jsonStandIn {
	out := jsonStandIn{Light: s.Light, For: s.For, Unknown: OrNull(s.Unknown), Faces: []jsonPassing{}}
	for i := range s.Faces {
		p := &s.Faces[i]
		one := jsonPassing{Person: p.Person, Share: Rounded(p.Share), Gap: jsonGapOf(p.Gap), Setting: p.Setting.json(), Passes: p.Passes(), Uncomputed: jsonKeys(p.Uncomputed)}
		if p.Gels.Changes() {
			one.Gels = p.Gels.json()
		}
		if one.Whites = []jsonWhite{}; p.Gap != nil {
			for _, w := range p.Whites {
				one.Whites = append(one.Whites, jsonWhite{Rounded(w.Kelvin), Rounded(w.Duv)})
			}
		}
		if w := p.Way; w != nil {
			one.Way = &jsonWay{Rounded(w.Angle), Rounded(w.Higher), RoundedOrNull(w.Right), Rounded(w.Wide), Rounded(w.For)}
		}
		out.Faces = append(out.Faces, one)
	}
	return out
}

func jsonGapOf(g *colour.Gap) *jsonGap {
	if g == nil {
		return nil
	}
	return &jsonGap{Rounded(g.Mired), Rounded(g.Duv)}
}

func (c *Cure) json() *jsonCure {
	if c == nil {
		return nil
	}
	out := &jsonCure{Off: OrNone(c.Off), Gels: OrNone(c.Gels), Left: jsonGapOf(c.Left), Stops: Rounded(c.Stops)}
	if c.White != nil {
		kelvin, duv := Rounded(c.White.Kelvin), Rounded(c.White.Duv)
		out.Kelvin, out.Duv = &kelvin, &duv
	}
	return out
}
