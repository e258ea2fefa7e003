package meter

// jsonContrast is how a face is lit; stops and ratios are null where its fill side is dark.
type jsonContrast struct {
	Person string   `json:"person"`
	Key    string   `json:"key"`
	Stops  *float64 `json:"stops"`
	Ratio  *float64 `json:"ratio"` // the ratio of key side to fill side

	KeyAndFillToFill *float64   `json:"keyAndFillToFill"` // the same ratio by its name in the trade
	KeyToFill        *float64   `json:"keyToFill"`        // ratio of what the key side has more to the fill side; null where that is no ratio of key to fill
	Cameras          []jsonView `json:"cameras"`          // those that see the face

	Steadiness *float64  `json:"steadiness"` // stops between the most and the least light within 20 cm about the face
	Skin       *jsonTone `json:"skin"`       // stops from grey; null where the scene does not say its reflectance
	Clothes    *jsonTone `json:"clothes"`

	Uncomputed []jsonKey `json:"uncomputed"`
}

type jsonView struct {
	Camera string     `json:"camera"`
	Key    Side       `json:"keySide"` // where in its picture the key side is
	From   Lean       `json:"from"`    // lit, shadow, front, behind: the side that it looks from
	Framed bool       `json:"inFrame"` // whether its frame has the eyes
	White  float64    `json:"white"`   // K
	KeyTo  *jsonShift `json:"keyColour"`
	FillTo *jsonShift `json:"fillColour"`

	Behind      []jsonBehind     `json:"behind"`
	Catchlights []jsonCatchlight `json:"catchlights"`
}

// jsonBehind is what a camera sees beside a head.
type jsonBehind struct {
	Picture   Side     `json:"side"`
	Surface   *string  `json:"surface"`   // null where nothing stands
	Luminance float64  `json:"luminance"` // cd/m²
	Over      *float64 `json:"over"`      // stops from grey by the camera's exposure
	Cheek     *float64 `json:"fromCheek"` // stops from a grey card at the cheek on that side
}

// jsonTone is where something stands by stops from grey in the light of the two sides of a face.
type jsonTone struct {
	Key  *float64 `json:"key"`
	Fill *float64 `json:"fill"`
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
	out := jsonContrast{Person: f.Person, Key: f.Side, Cameras: jsonViews(f.Views), Uncomputed: jsonKeys(f.Uncomputed),
		Steadiness: RoundedOrNull(f.Steadiness), Skin: f.Skin.json(), Clothes: f.Clothes.json()}
	if c := f.Contrast; c != nil {
		stops, ratio := Rounded(c.Stops), Rounded(c.Ratio)
		out.Stops, out.Ratio, out.KeyAndFillToFill = &stops, &ratio, &ratio
	}
	if ratio, ok := f.KeyToFill(); ok {
		ratio = Rounded(ratio)
		out.KeyToFill = &ratio
	}
	return out
}

func jsonViews(views []View) []jsonView {
	out := []jsonView{}
	for i := range views {
		v := &views[i]
		one := jsonView{Camera: v.Camera, Key: v.Key, From: v.From, Framed: !v.Outside, White: Rounded(v.White), KeyTo: v.KeyShift.json(), FillTo: v.FillShift.json(),
			Behind: []jsonBehind{}, Catchlights: []jsonCatchlight{}}
		for _, b := range v.Behind {
			one.Behind = append(one.Behind, jsonBehind{b.Picture, OrNull(b.Surface), Rounded(b.Luminance), RoundedOrNull(b.Over), RoundedOrNull(b.Cheek)})
		}
		for _, c := range v.Catchlights {
			one.Catchlights = append(one.Catchlights, c.json())
		}
		out = append(out, one)
	}
	return out
}

func (t *Tone) json() *jsonTone {
	if t == nil {
		return nil
	}
	return &jsonTone{RoundedOrNull(t.Key), RoundedOrNull(t.Fill)}
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
