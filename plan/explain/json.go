package explain

import (
	"encoding/json"
	"io"

	"scrimshaw/plan/meter"
)

// WriteJSON writes explanations as a list, one object each.
func WriteJSON(w io.Writer, all []Explanation) error {
	list := make([]jsonExplanation, len(all))
	for i := range all {
		list[i] = all[i].json()
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(list)
}

type jsonExplanation struct {
	Scene      string      `json:"scene"`
	Setup      *string     `json:"setup"`
	Cue        *string     `json:"cue"` // null: in the set-up itself
	Reading    string      `json:"reading"`
	Kind       string      `json:"kind"`
	Value      float64     `json:"value"`   // lx, or cd/m² of a spot
	Unit       string      `json:"unit"`    // of the value
	Error      *float64    `json:"error"`   // of the value, as a share of it
	Surface    *string     `json:"surface"` // that a spot meter looks at
	Place      []jsonStep  `json:"place"`
	Lights     []jsonLight `json:"lights"`
	Sum        []jsonStep  `json:"sum"`
	Exposure   []jsonStep  `json:"exposure"`
	Uncomputed []string    `json:"uncomputed"` // keys that could change it and that nothing computes yet
}

type jsonLight struct {
	Light    string       `json:"light"`
	Value    float64      `json:"value"` // lx, or cd/m²
	Lamp     []jsonStep   `json:"lamp"`
	Straight []jsonStep   `json:"straight"`
	Ways     []jsonWay    `json:"ways"`
	Why      *string      `json:"nothingStraight"` // why nothing comes straight; null where something does
	Returned []jsonReturn `json:"returned"`
	Total    []jsonStep   `json:"total"`
	StandIn  *jsonStandIn `json:"standIn"` // null where the light stands for nothing, or is judged at other faces
}

type jsonStandIn struct {
	For   string     `json:"standsFor"` // as it is worded
	Steps []jsonStep `json:"steps"`
}

type jsonWay struct {
	Via   []string   `json:"via"`
	Steps []jsonStep `json:"steps"`
	Value float64    `json:"value"` // lx, or cd/m²
}

type jsonReturn struct {
	Path  string   `json:"path"`
	From  string   `json:"from"`
	Via   []string `json:"via"`
	Value float64  `json:"value"` // lx, or cd/m²
}

type jsonStep struct {
	Words   string      `json:"words"`
	Symbol  *string     `json:"symbol"`
	Formula *string     `json:"formula"`
	In      []jsonInput `json:"in"`
	Value   float64     `json:"value"` // in unit: lx, m, °
	Unit    string      `json:"unit"`
	Source  *string     `json:"source"`
}

type jsonInput struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"` // in the unit of its own line: lx, m, °
}

func (e *Explanation) json() jsonExplanation {
	out := jsonExplanation{Scene: e.Scene, Setup: meter.OrNull(e.Setup), Cue: meter.OrNull(e.Cue), Reading: e.Reading.Name, Kind: string(e.Reading.Kind),
		Value: meter.Rounded(e.all()), Unit: e.unit(), Error: meter.RoundedOrNull(e.Reading.Error),
		Surface: meter.OrNull(e.Surface), Place: jsonSteps(e.Place), Lights: []jsonLight{}, Sum: jsonSteps(e.Sum), Exposure: jsonSteps(e.Exposure), Uncomputed: []string{}}
	for i := range e.Lights {
		out.Lights = append(out.Lights, e.Lights[i].json())
	}
	for _, u := range e.Reading.Uncomputed {
		out.Uncomputed = append(out.Uncomputed, u.Path)
	}
	return out
}

func (l *Light) json() jsonLight {
	out := jsonLight{Light: l.Name, Value: meter.Rounded(l.Value), Lamp: jsonSteps(l.Lamp), Straight: jsonSteps(l.Straight), Ways: []jsonWay{},
		Why: meter.OrNull(l.Why), Returned: []jsonReturn{}, Total: jsonSteps(l.Total)}
	if s := l.StandIn; s != nil {
		out.StandIn = &jsonStandIn{s.For, jsonSteps(s.Steps)}
	}
	for _, w := range l.Ways {
		out.Ways = append(out.Ways, jsonWay{meter.OrNone(w.Via), jsonSteps(w.Steps), meter.Rounded(w.Value)})
	}
	for _, r := range l.Returned {
		out.Returned = append(out.Returned, jsonReturn{r.Path, r.From, meter.OrNone(r.Via), meter.Rounded(r.Lux)})
	}
	return out
}

func jsonSteps(steps []Step) []jsonStep {
	out := []jsonStep{}
	for _, s := range steps {
		in := []jsonInput{}
		for _, v := range s.In {
			in = append(in, jsonInput{v.Symbol, meter.Rounded(v.Value)})
		}
		out = append(out, jsonStep{s.Words, meter.OrNull(s.Symbol), meter.OrNull(s.Formula), in, meter.Rounded(s.Value), s.Unit, meter.OrNull(s.Source)})
	}
	return out
}
