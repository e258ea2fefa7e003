package meter

import "scrimshaw/plan/shot"

// jsonCamera is what a camera sees.
type jsonCamera struct {
	Camera     string       `json:"camera"`     // "A.end" is A at the end of its track
	Horizontal float64      `json:"horizontal"` // angles of view, degrees
	Vertical   float64      `json:"vertical"`   // degrees
	Diagonal   float64      `json:"diagonal"`   // degrees
	Stop       float64      `json:"stop"`       // T-number that it works at
	Confusion  float64      `json:"confusion"`  // diameter of the circle that counts as a point, mm
	Hyperfocal *float64     `json:"hyperfocal"` // m; null without a stop, as near is
	Subject    *jsonSubject `json:"subject"`    // null: nobody is in frame
}

// jsonSubject is whom it is focused on.
type jsonSubject struct {
	Name     string    `json:"name"`
	Distance float64   `json:"distance"` // along the axis of the lens, m
	Width    float64   `json:"width"`    // of the frame there, m
	Height   float64   `json:"height"`   // m
	Size     shot.Size `json:"size"`
	Head     float64   `json:"head"` // share of the frame's height
	Body     float64   `json:"body"` // share of it
	Near     *float64  `json:"near"` // what is sharp, m
	Far      *float64  `json:"far"`  // m; null: all beyond
}

func jsonCameras(all []shot.Shot) []jsonCamera {
	out := []jsonCamera{}
	for i := range all {
		c := &all[i]
		one := jsonCamera{Camera: c.Camera, Horizontal: Rounded(c.Angles[0]), Vertical: Rounded(c.Angles[1]), Diagonal: Rounded(c.Angles[2]),
			Stop: Rounded(c.Number), Confusion: Rounded(c.Confusion), Hyperfocal: orNone(c.Hyperfocal)}
		if p := c.Subject; p != nil {
			one.Subject = &jsonSubject{Name: p.Name, Distance: Rounded(p.Distance), Width: Rounded(p.Width), Height: Rounded(p.Height),
				Size: p.Size, Head: Rounded(p.Head), Body: Rounded(p.Body), Near: orNone(p.Near), Far: orNone(p.Far)}
		}
		out = append(out, one)
	}
	return out
}

// jsonTrack is what changes along the track of a camera. Distances are m from its start.
type jsonTrack struct {
	Camera  string            `json:"camera"`
	Length  float64           `json:"length"`
	Changes []jsonTrackChange `json:"changes"`
}

// jsonTrackChange is a place from which on the size of the shot is another, or the side of a face that it looks from.
type jsonTrackChange struct {
	Along  float64 `json:"along"`  // m
	Person *string `json:"person"` // null: nobody is in frame
	Size   *string `json:"size"`   // null of a side
	From   *string `json:"from"`   // lit, shadow, front or behind; null of a size
}

func jsonTracks(all []Track) []jsonTrack {
	out := []jsonTrack{}
	for i := range all {
		t := jsonTrack{Camera: all[i].Camera, Length: Rounded(all[i].Length), Changes: []jsonTrackChange{}}
		for _, c := range all[i].Changes {
			t.Changes = append(t.Changes, jsonTrackChange{Along: Rounded(c.Along), Person: OrNull(c.Person), Size: OrNull(string(c.Size)), From: OrNull(string(c.From))})
		}
		out = append(out, t)
	}
	return out
}

// orNone is a figure that is not known where it is 0.
func orNone(metres float64) *float64 {
	if metres == 0 {
		return nil
	}
	return RoundedOrNull(&metres)
}
