package shot

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// Size is what a shot of somebody is called.
type Size string

// The sizes of shots, from the nearest.
const (
	ExtremeCloseUp Size = "extreme close-up"
	CloseUp        Size = "close-up"
	MediumCloseUp  Size = "medium close-up"
	MediumShot     Size = "medium shot"
	MediumLong     Size = "medium long shot"
	FullShot       Size = "full shot"
	WideShot       Size = "wide shot"
	ExtremeWide    Size = "extreme wide shot"
)

// sizes give each its least share of the frame's height that a head takes. Common practice: part of a face, head and
// shoulders, down to the chest, the waist, the knees, the whole body, with some room over the head; no standard says where
// one ends.
var sizes = [...]struct {
	size Size
	head float64
}{
	{ExtremeCloseUp, 1.1}, {CloseUp, 0.45}, {MediumCloseUp, 0.30}, {MediumShot, 0.20},
	{MediumLong, 0.13}, {FullShot, 0.085}, {WideShot, 0.03}, {ExtremeWide, 0},
}

// headHeight is that of a head from crown to chin, m: the eyes lie half way (common practice of drawing).
const headHeight = 2 * scene.EyesToCrown

// measure says how large somebody is in the frame, and what such a shot is called.
func (s *Subject) measure(p *plan.Person) {
	s.Head, s.Body = headHeight/s.Height, (p.Crown-p.Base)/s.Height
	for _, row := range sizes {
		if s.Head >= row.head {
			s.Size = row.size
			return
		}
	}
}

// takes says what of somebody is measured against the frame in such a shot: the head, or all of a body that fits.
func (s *Subject) takes() (part string, share float64) {
	switch s.Size {
	case FullShot, WideShot, ExtremeWide:
		return "body", s.Body
	}
	return "head", s.Head
}
