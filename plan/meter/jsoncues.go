package meter

// jsonCues is what the cues of a set-up do.
type jsonCues struct {
	Axis   jsonAxis    `json:"axis"`
	States []jsonState `json:"states"` // the first is before all cues
	Curves []jsonCurve `json:"curves"` // of the key side of each face; of the meters, where there are none
}

// jsonAxis is the time axis of the curves.
type jsonAxis struct {
	Timed bool      `json:"timed"` // seconds of the take; else of the fades, with even steps between them
	End   float64   `json:"end"`   // s
	Start []float64 `json:"start"` // s, when each cue goes
}

type jsonState struct {
	Cue      *string          `json:"cue"`     // null before all cues
	At       *string          `json:"at"`      // the words that it goes on
	Seconds  *float64         `json:"seconds"` // from the start of the take, s
	Over     float64          `json:"over"`    // s that it takes
	Moves    []jsonMove       `json:"moves"`
	Readings []jsonCueReading `json:"readings"`
}

type jsonMove struct {
	Light string      `json:"light"`
	From  jsonSetting `json:"from"`
	To    jsonSetting `json:"to"`
}

type jsonSetting struct {
	Level float64  `json:"level"` // share of the full output, 0 to 1
	CCT   *float64 `json:"cct"`   // of its light at that level, after its gels, K
}

type jsonCueReading struct {
	Name       string    `json:"name"`
	Side       *string   `json:"side"` // of a key side, the person's own
	Lux        *float64  `json:"lux"`
	Luminance  *float64  `json:"luminance"` // cd/m²
	Stop       *float64  `json:"stop"`      // T-number
	Over       *float64  `json:"over"`      // stops over the working stop
	Change     *float64  `json:"change"`    // stops from the state before
	CCT        *float64  `json:"cct"`       // K
	Duv        *float64  `json:"duv"`       // CIE 1960 u v
	Uncomputed []jsonKey `json:"uncomputed"`
}

type jsonCurve struct {
	Person  string           `json:"person"`  // or the meter
	Working float64          `json:"working"` // T-number
	Points  []jsonCurvePoint `json:"points"`
}

type jsonCurvePoint struct {
	Seconds float64  `json:"seconds"` // on the axis
	Lux     float64  `json:"lux"`
	Over    *float64 `json:"over"` // stops over the working stop; null of no light
}

// jsonPlayed is what a light does that changes by itself.
type jsonPlayed struct {
	Light    string           `json:"light"`
	Kind     string           `json:"kind"`
	Low      float64          `json:"low"`  // share of the full output, 0 to 1
	High     float64          `json:"high"` // share of the full output, 0 to 1
	Rate     float64          `json:"rate"` // 1/s
	Cue      *string          `json:"cue"`  // after which it is up; null: in the set-up itself
	Readings []jsonPlayedRead `json:"readings"`
}

type jsonPlayedRead struct {
	Name string         `json:"name"`
	Low  jsonCueReading `json:"low"`
	Mean jsonCueReading `json:"mean"` // over all levels between low and high
	High jsonCueReading `json:"high"`
}

func (c *Cues) json() *jsonCues {
	if c == nil {
		return nil
	}
	out := &jsonCues{Axis: jsonAxis{Timed: c.Axis.Timed, End: Rounded(c.Axis.End), Start: []float64{}}, States: []jsonState{}, Curves: []jsonCurve{}}
	for _, at := range c.Axis.Start {
		out.Axis.Start = append(out.Axis.Start, Rounded(at))
	}
	for i := range c.States {
		out.States = append(out.States, c.States[i].json())
	}
	for i := range c.Curves {
		curve := jsonCurve{Person: c.Curves[i].Person, Working: Rounded(c.Curves[i].Working), Points: []jsonCurvePoint{}}
		for _, p := range c.Curves[i].Points {
			curve.Points = append(curve.Points, jsonCurvePoint{Rounded(p.Seconds), Rounded(p.Lux), RoundedOrNull(p.Over)})
		}
		out.Curves = append(out.Curves, curve)
	}
	return out
}

func (s *CueState) json() jsonState {
	out := jsonState{Moves: []jsonMove{}, Readings: []jsonCueReading{}}
	if q := s.Cue; q != nil {
		out.Cue, out.At, out.Seconds, out.Over = &q.Name, OrNull(q.At), RoundedOrNull(q.Seconds), Rounded(q.Over)
	}
	setting := func(s *CueSetting) jsonSetting { return jsonSetting{Rounded(s.Level), RoundedOrNull(s.Kelvin)} }
	for i := range s.Moves {
		m := &s.Moves[i]
		out.Moves = append(out.Moves, jsonMove{m.Light, setting(&m.From), setting(&m.To)})
	}
	for i := range s.Readings {
		r := &s.Readings[i]
		one := r.cueJSON()
		one.Side, one.Change = OrNull(r.Side), RoundedOrNull(r.Change)
		out.Readings = append(out.Readings, one)
	}
	return out
}

func (r *Reading) cueJSON() jsonCueReading {
	return jsonCueReading{Name: r.Name, Lux: RoundedOrNull(r.Lux), Luminance: RoundedOrNull(r.Luminance), Stop: RoundedOrNull(r.Stop),
		Over: RoundedOrNull(r.Over), CCT: RoundedOrNull(r.CCT), Duv: RoundedOrNull(r.Duv), Uncomputed: jsonKeys(r.Uncomputed)}
}

func jsonPlays(all []Played) []jsonPlayed {
	out := []jsonPlayed{}
	for i := range all {
		p := &all[i]
		one := jsonPlayed{Light: p.Light, Kind: string(p.Play.Kind), Low: Rounded(p.Low), High: Rounded(p.High), Rate: Rounded(p.Play.Rate),
			Cue: OrNull(p.Cue), Readings: []jsonPlayedRead{}}
		for k := range p.Readings {
			r := &p.Readings[k]
			one.Readings = append(one.Readings, jsonPlayedRead{r.High.Name, r.Low.cueJSON(), r.Mean.cueJSON(), r.High.cueJSON()})
		}
		out = append(out, one)
	}
	return out
}
