package meter

// jsonContrast is how a face is lit; stops and ratios are null where its fill side is dark.
type jsonContrast struct {
	Person string   `json:"person"`
	Key    string   `json:"key"`
	Stops  *float64 `json:"stops"`
	Ratio  *float64 `json:"ratio"` // the ratio of key side to fill side

	KeyAndFillToFill *float64   `json:"keyAndFillToFill"` // the same ratio by its name in the trade
	KeyToFill        *float64   `json:"keyToFill"`        // ratio of what the key side has more to the fill side
	Cameras          []jsonView `json:"cameras"`          // those that see the face

	Uncomputed []jsonKey `json:"uncomputed"`
}

type jsonView struct {
	Camera string     `json:"camera"`
	Key    Side       `json:"keySide"` // where in its picture the key side is
	From   Lean       `json:"from"`    // lit, shadow, front, behind: the side that it looks from
	White  float64    `json:"white"`   // K
	KeyTo  *jsonShift `json:"keyColour"`
	FillTo *jsonShift `json:"fillColour"`

	Catchlights []jsonCatchlight `json:"catchlights"`
}

type jsonCatchlight struct {
	Light string  `json:"light"`
	Hour  *int    `json:"hour"` // of the clock about the pupil; null on its middle
	Size  float64 `json:"size"` // how wide, as a share of the iris
}

// jsonShift is how a side's colour lies from the camera's white.
type jsonShift struct {
	Mired float64 `json:"mired"` // plus is warmer
	Duv   float64 `json:"duv"`   // plus is green
	Green *string `json:"green"` // the gel of the catalogue that is nearest; null where none is needed
}

func (f *Face) json() jsonContrast {
	out := jsonContrast{Person: f.Person, Key: f.Side, Cameras: jsonViews(f.Views), Uncomputed: jsonKeys(f.Uncomputed)}
	if c := f.Contrast; c != nil {
		stops, ratio, keyToFill := Rounded(c.Stops), Rounded(c.Ratio), Rounded(c.KeyToFill())
		out.Stops, out.Ratio, out.KeyAndFillToFill, out.KeyToFill = &stops, &ratio, &ratio, &keyToFill
	}
	return out
}

func jsonViews(views []View) []jsonView {
	out := []jsonView{}
	for i := range views {
		v := &views[i]
		one := jsonView{Camera: v.Camera, Key: v.Key, From: v.From, White: Rounded(v.White), KeyTo: v.KeyShift.json(), FillTo: v.FillShift.json(), Catchlights: []jsonCatchlight{}}
		for _, c := range v.Catchlights {
			one.Catchlights = append(one.Catchlights, c.json())
		}
		out = append(out, one)
	}
	return out
}

func (s *Shift) json() *jsonShift {
	if s == nil {
		return nil
	}
	return &jsonShift{Mired: Rounded(s.Mired), Duv: Rounded(s.Duv), Green: OrNull(s.Green)}
}

func (c *Catchlight) json() jsonCatchlight {
	out := jsonCatchlight{Light: c.Light, Size: Rounded(c.Size)}
	if c.Hour > 0 {
		out.Hour = &c.Hour
	}
	return out
}
