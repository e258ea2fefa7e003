package meter

// jsonPicture is how what a camera sees lies from its grey.
type jsonPicture struct {
	Camera     string        `json:"camera"`
	Places     int           `json:"places"` // at how many places of the frame it is looked
	Over       *float64      `json:"over"`   // what the camera holds over grey, stops; null: nothing says it
	Under      *float64      `json:"under"`  // stops
	Surfaces   []jsonSurface `json:"surfaces"`
	Lamps      []jsonLamp    `json:"lamps"`
	Beyond     []jsonBeyond  `json:"beyond"`
	Unjudged   []string      `json:"unjudged"` // people whose skin nothing says
	Uncomputed []jsonKey     `json:"uncomputed"`
}

// jsonSurface is one surface; stops from grey.
type jsonSurface struct {
	Name    *string  `json:"name"`    // null: nothing, and no light comes from there
	Through *string  `json:"through"` // the opening that it is seen through
	Share   float64  `json:"share"`   // of the frame
	Mean    *float64 `json:"mean"`    // stops from grey; null where it is dark, as most and least
	Most    *float64 `json:"most"`
	Least   *float64 `json:"least"`
	MostAt  string   `json:"mostAt"`
	LeastAt string   `json:"leastAt"`
	Clipped float64  `json:"clipped"` // share of the frame
	Sunk    float64  `json:"sunk"`    // share of the frame
}

// jsonLamp is a lamp that is meant to be in the picture.
type jsonLamp struct {
	Light     string   `json:"light"`
	Where     string   `json:"where"`
	Share     float64  `json:"share"`     // share of the frame
	Luminance *float64 `json:"luminance"` // cd/m²
	Over      *float64 `json:"over"`      // stops from grey
}

// jsonBeyond is what a camera does not hold.
type jsonBeyond struct {
	What  string   `json:"what"`
	Sinks bool     `json:"sinks"` // else it clips
	Over  *float64 `json:"over"`  // stops from grey; null of what is dark
	Share float64  `json:"share"` // share of the frame; 0 of a side of a face
}

func jsonPictures(all []Picture) []jsonPicture {
	out := []jsonPicture{}
	for i := range all {
		out = append(out, all[i].json())
	}
	return out
}

func (p *Picture) json() jsonPicture {
	out := jsonPicture{Camera: p.Camera, Places: p.Places, Over: orNone(p.Range.Over), Under: orNone(p.Range.Under), Surfaces: []jsonSurface{}, Lamps: []jsonLamp{},
		Beyond: []jsonBeyond{}, Unjudged: OrNone(p.Unjudged), Uncomputed: jsonKeys(p.Uncomputed)}
	for i := range p.Surfaces {
		s := &p.Surfaces[i]
		out.Surfaces = append(out.Surfaces, jsonSurface{OrNull(s.Name), OrNull(s.Through), Rounded(s.Share), RoundedOrNull(s.Mean), RoundedOrNull(s.Most),
			RoundedOrNull(s.Least), s.MostAt, s.LeastAt, Rounded(s.Clipped), Rounded(s.Sunk)})
	}
	for i := range p.Lamps {
		l := &p.Lamps[i]
		out.Lamps = append(out.Lamps, jsonLamp{l.Light, l.Where, Rounded(l.Share), RoundedOrNull(l.Luminance), RoundedOrNull(l.Over)})
	}
	for i := range p.Beyond {
		b := &p.Beyond[i]
		out.Beyond = append(out.Beyond, jsonBeyond{b.What, b.Sinks, RoundedOrNull(b.Over), Rounded(b.Share)})
	}
	return out
}
