package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/lens"
)

// Picture is how what a camera sees lies from its grey.
type Picture struct {
	Camera   string
	Range    lens.Range // what the camera holds, stops from grey
	Places   int        // at how many places of the frame it is looked
	Surfaces []Surface  // what takes the most of the frame first; not people, of whom the readings at faces tell
	Lamps    []LampSeen // that are meant to be in the picture, in the order of the scene
	Beyond   []Beyond   // what clips or sinks; none where the camera does not say its range
	Unjudged []string   // the people whose faces it sees and whose skin nothing says, where it says its range

	Uncomputed []plan.Uncomputed // keys that could change it and that nothing computes yet
}

// Surface is one surface in a picture. The figures are stops from grey; nil where it is dark.
type Surface struct {
	Name    string // "" of nothing: no light comes from there
	Through string // the opening that it is seen through; "" none
	Share   float64
	Mean    *float64 // of its luminance over what is in the frame
	Most    *float64 // where it is brightest
	Least   *float64 // where it is darkest
	MostAt  string   // in the picture: "in the upper left"
	LeastAt string

	Clipped, Sunk float64 // shares of the frame where it is beyond what the camera holds
}

// LampSeen is a lamp in a picture.
type LampSeen struct {
	Light, Numbered string
	Where           string   // in the picture
	Share           float64  // share of the frame
	Luminance       *float64 // mean of its opening as the camera sees it, cd/m²; nil where nothing of that is known
	Over            *float64 // stops from grey
}

// Beyond is something that a camera does not hold.
type Beyond struct {
	What   string
	Person string   // whose face it is a side of
	Light  string   // of a lamp
	Sinks  bool     // else it clips
	Over   *float64 // stops from grey where it is farthest beyond; nil of what is dark
	Share  float64  // share of the frame that it takes there; 0 of a side of a face
}

// Words name a surface: "nothing", "kitchen.top through hall".
func (s *Surface) Words() string {
	words := s.Name
	if words == "" {
		words = "nothing"
	}
	if s.Through != "" && s.Through != s.Name {
		words += " through " + s.Through
	}
	return words
}

// Judge says what of a picture is beyond what its camera holds. faces are the readings by which the sides of faces are judged.
func (p *Picture) Judge(s *plan.Setup, set *Set) {
	if !p.Range.Known() {
		return
	}
	p.judgeFaces(s, set)
	for i := range p.Lamps {
		l := &p.Lamps[i]
		switch {
		case l.Over == nil:
		case p.Range.Clips(*l.Over):
			p.Beyond = append(p.Beyond, Beyond{What: l.Numbered, Light: l.Light, Over: l.Over, Share: l.Share})
		case p.Range.Sinks(*l.Over):
			p.Beyond = append(p.Beyond, Beyond{What: l.Numbered, Light: l.Light, Over: l.Over, Share: l.Share, Sinks: true})
		}
	}
	for i := range p.Surfaces {
		one := &p.Surfaces[i]
		if one.Clipped > 0 {
			p.Beyond = append(p.Beyond, Beyond{What: one.Words(), Over: one.Most, Share: one.Clipped})
		}
		if one.Sunk > 0 {
			p.Beyond = append(p.Beyond, Beyond{What: one.Words(), Over: one.Least, Share: one.Sunk, Sinks: true})
		}
	}
}

// judgeFaces judges both sides of the faces that the camera sees and whose skin the scene says.
func (p *Picture) judgeFaces(s *plan.Setup, set *Set) {
	c := s.CameraNamed(p.Camera)
	for i := range set.Faces {
		f := &set.Faces[i]
		post := s.Post(f.Person)
		if c == nil || post == nil || !f.seenBy(p.Camera) {
			continue
		}
		if post.Skin <= 0 {
			p.Unjudged = append(p.Unjudged, f.Person)
			continue
		}
		for _, side := range [...]string{"key", "fill"} {
			r := set.Named(f.Person + "." + side)
			if r == nil || r.Lux == nil {
				continue
			}
			over := FiniteOrNil(c.Exposure.Metered().Over(*r.Lux, c.Exposure.Stop.N) + lens.Stops(post.Skin/lens.Grey))
			b := Beyond{What: "the " + side + " side of " + f.Person, Person: f.Person, Over: over, Sinks: over == nil || p.Range.Sinks(*over)}
			if over == nil && p.Range.Under > 0 || over != nil && (b.Sinks || p.Range.Clips(*over)) {
				p.Beyond = append(p.Beyond, b)
			}
		}
	}
}

// seenBy says whether a camera sees a face.
func (f *Face) seenBy(camera string) bool {
	for i := range f.Views {
		if f.Views[i].Camera == camera {
			return true
		}
	}
	return false
}
