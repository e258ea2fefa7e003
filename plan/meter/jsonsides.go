package meter

type jsonView struct {
	Camera string     `json:"camera"`
	Key    Side       `json:"keySide"` // where in its picture the key side is
	From   Lean       `json:"from"`    // lit, shadow, front, behind: the side that it looks from
	White  float64    `json:"white"`   // K
	KeyTo  *jsonShift `json:"keyColour"`
	FillTo *jsonShift `json:"fillColour"`
}

// jsonShift is how a side's colour lies from the camera's white.
type jsonShift struct {
	Mired float64 `json:"mired"` // plus is warmer
	Duv   float64 `json:"duv"`   // plus is green
	Green *string `json:"green"` // the gel of the catalogue that is nearest; null where none is needed
}

func jsonViews(views []View) []jsonView {
	out := []jsonView{}
	for i := range views {
		v := &views[i]
		out = append(out, jsonView{Camera: v.Camera, Key: v.Key, From: v.From, White: Rounded(v.White), KeyTo: v.KeyShift.json(), FillTo: v.FillShift.json()})
	}
	return out
}

func (s *Shift) json() *jsonShift {
	if s == nil {
		return nil
	}
	return &jsonShift{Mired: Rounded(s.Mired), Duv: Rounded(s.Duv), Green: orNull(s.Green)}
}
