package meter

import (
	"encoding/json"
	"io"
)

// WriteJSON writes sets as a list of one object a set-up. Lengths are metres; what has no
// meaning is null.
func WriteJSON(w io.Writer, sets []Set) error {
	list := make([]jsonSet, len(sets))
	for i := range sets {
		list[i] = sets[i].json()
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(list)
}

type jsonSet struct {
	Scene       string           `json:"scene"`
	Setup       *string          `json:"setup"`
	Readings    []jsonReading    `json:"readings"`
	Contrasts   []jsonContrast   `json:"contrasts"`
	Walks       []jsonWalk       `json:"walks"`
	Tracks      []jsonTrack      `json:"tracks"`
	Cameras     []jsonCamera     `json:"cameras"`
	Reflections []jsonReflection `json:"reflections"`
	Flares      []jsonFlare      `json:"flares"`
	Flickers    []jsonFlicker    `json:"flickers"`
	Pictures    []jsonPicture    `json:"pictures"`
	Teach       *jsonLesson      `json:"teach"`
	StandIns    []jsonStandIn    `json:"standIns"`
	InHand      []jsonInHand     `json:"inHand"`
	Cues        *jsonCues        `json:"cues"`  // null where the set-up has none
	Plays       []jsonPlayed     `json:"plays"` // lights that change by themselves
}

type jsonReading struct {
	Name        string      `json:"name"`
	Kind        string      `json:"kind"`
	At          [3]float64  `json:"at"`     // m
	Facing      [3]float64  `json:"facing"` // unit vector
	Lux         *float64    `json:"lux"`
	Luminance   *float64    `json:"luminance"` // cd/m²
	Footcandles *float64    `json:"footcandles"`
	Stop        *float64    `json:"stop"`  // T-number
	Over        *float64    `json:"over"`  // stops over the working stop
	CCT         *float64    `json:"cct"`   // correlated colour temperature, K
	Duv         *float64    `json:"duv"`   // distance from the Planckian locus, CIE 1960 u v
	XY          *[2]float64 `json:"xy"`    // chromaticity, CIE 1931
	Error       *float64    `json:"error"` // of the light, as a share of it
	Shares      []jsonShare `json:"shares"`
	Sees        *jsonSees   `json:"sees"` // of a spot
	Uncomputed  []jsonKey   `json:"uncomputed"`
}

type jsonShare struct {
	Light string   `json:"light"`
	Path  string   `json:"path"`
	Via   []string `json:"via"`
	From  *string  `json:"from"`
	Lux   float64  `json:"lux"`
}

// jsonSees is what a spot meter reads.
type jsonSees struct {
	Surface  *string  `json:"surface"`   // null: nothing
	Past     []string `json:"past"`      // glass, cloth and mirrors before it, from the lens on
	Stop12_5 *float64 `json:"stopK12.5"` // T-number that a hand-held spot meter shows of it, by its constant K
	Stop14   *float64 `json:"stopK14"`   // T-number
}

func (s *Sees) json() *jsonSees {
	if s == nil {
		return nil
	}
	out := &jsonSees{Surface: OrNull(s.Surface), Past: []string{}, Stop12_5: orNone(s.HandHeld[0]), Stop14: orNone(s.HandHeld[1])}
	for i := range s.Past {
		out.Past = append(out.Past, s.Past[i].Name)
	}
	return out
}

func (s *Set) json() jsonSet {
	out := jsonSet{Scene: s.Scene, Setup: OrNull(s.Setup), Readings: []jsonReading{}, Contrasts: []jsonContrast{}, Walks: []jsonWalk{}, StandIns: []jsonStandIn{}, InHand: []jsonInHand{}, Tracks: jsonTracks(s.Tracks), Cameras: jsonCameras(s.Cameras), Pictures: jsonPictures(s.Pictures),
		Reflections: jsonReflections(s.Reflections), Flares: jsonFlares(s.Flares), Flickers: jsonFlickers(s.Flickers), Teach: s.Lesson.json(), Cues: s.Cues.json(), Plays: jsonPlays(s.Played)}
	for i := range s.Readings {
		out.Readings = append(out.Readings, s.Readings[i].json())
	}
	for i := range s.Faces {
		out.Contrasts = append(out.Contrasts, s.Faces[i].json())
	}
	for i := range s.StandIns {
		out.StandIns = append(out.StandIns, s.StandIns[i].json())
	}
	for i := range s.InHand {
		out.InHand = append(out.InHand, s.InHand[i].json())
	}
	for i := range s.Walks {
		out.Walks = append(out.Walks, s.Walks[i].json())
	}
	return out
}

func (r *Reading) json() jsonReading {
	out := jsonReading{Name: r.Name, Kind: string(r.Kind), At: triple(r.At), Facing: triple(r.Facing),
		Lux: RoundedOrNull(r.Lux), Luminance: RoundedOrNull(r.Luminance), Footcandles: RoundedOrNull(r.Footcandles),
		Stop: RoundedOrNull(r.Stop), Over: RoundedOrNull(r.Over), CCT: RoundedOrNull(r.CCT), Duv: RoundedOrNull(r.Duv), Error: RoundedOrNull(r.Error), Shares: []jsonShare{},
		Sees: r.Sees.json(), Uncomputed: jsonKeys(r.Uncomputed)}
	if r.XY != nil {
		out.XY = &[2]float64{Rounded(r.XY[0]), Rounded(r.XY[1])}
	}
	for _, s := range r.Shares {
		out.Shares = append(out.Shares, jsonShare{Light: s.Light, Path: s.Path, Via: OrNone(s.Via), From: OrNull(s.From), Lux: Rounded(s.Lux)})
	}
	return out
}
