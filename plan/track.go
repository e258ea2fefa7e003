package plan

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// Track is the path of a camera, on rails that lie level: the lens keeps its height. The camera stands at the start of it.
type Track struct {
	Corners []r2.Vec // its places, m; no two in a row are one
	Aim     *r3.Vec  // the point that the camera goes on looking at, m; nil: it keeps its direction
	Span    source.Span
}

// LongestTrack is the longest track that is looked along, m.
const LongestTrack = 50.0

// The measures of rails, m, common practice: from the middle of one to that of the other, the width of each with its foot, how high
// they lie with what levels them, and how far sleepers are apart.
const (
	RailGauge  = 0.62
	RailWidth  = 0.05
	RailHeight = 0.10
	SleeperGap = 1.0
)

// Length is how long a track is, m.
func (t *Track) Length() float64 { return plane.PathLength(t.Corners) }

// Bed is the ground that rails take from one corner of a track, by its number, to the next, m: convex and counter-clockwise.
func (t *Track) Bed(from int) []r2.Vec {
	return plane.Strip(t.Corners[from], t.Corners[from+1], RailGauge+RailWidth)
}

// Nearest is how far a place of the plan lies from the middle of the track, m, and how far along it that is nearest.
func (t *Track) Nearest(p r2.Vec) (away, along float64) {
	away = math.Inf(1)
	from := 0.0
	for i := 1; i < len(t.Corners); i++ {
		on, _ := plane.NearestOnSegment(p, t.Corners[i-1], t.Corners[i])
		if d := r2.Norm(r2.Sub(p, on)); d < away {
			away, along = d, from+r2.Norm(r2.Sub(on, t.Corners[i-1]))
		}
		from += r2.Norm(r2.Sub(t.Corners[i], t.Corners[i-1]))
	}
	return away, along
}

// OnTrack is a camera as it is so far along its track, m; one without a track is where it is.
func (c *Camera) OnTrack(along float64) Camera {
	at := *c
	if c.Track == nil || along <= 0 {
		return at
	}
	place, _ := plane.OnPath(c.Track.Corners, along)
	at.Frame.At = AtHeight(place, c.Frame.At.Z)
	if c.Track.Aim != nil {
		if axis := r3.Sub(*c.Track.Aim, at.Frame.At); r3.Norm(axis) > plane.Grain {
			at.Frame = FrameAlong(at.Frame.At, axis, plane.Bearing(InPlan(c.Frame.Axis)), 0)
		}
	}
	return at
}

// endOfTrack follows the name of a camera that is at the end of its track: "A.end".
const endOfTrack = ".end"

// AtEnd is the name of a camera as it is at the end of its track.
func (c *Camera) AtEnd() string { return c.Name + endOfTrack }

// CameraPosts are all cameras where they are, and after each that moves the same as it is at the end of its track, by a name of its
// own: "A.end".
func (s *Setup) CameraPosts() (all []Camera) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		all = append(all, *c)
		if c.Track != nil {
			end := c.OnTrack(c.Track.Length())
			end.Name, end.Track = c.AtEnd(), nil
			all = append(all, end)
		}
	}
	return all
}

// CameraPost is the one of a name, a camera's or that of one at the end of its track; nil where there is none.
func (s *Setup) CameraPost(name string) *Camera {
	all := s.CameraPosts()
	for i := range all {
		if all[i].Name == name {
			return &all[i]
		}
	}
	return nil
}

// CameraOf is the camera of a post: "A" of "A.end".
func CameraOf(post string) string { return strings.TrimSuffix(post, endOfTrack) }

// CameraWords says a post in words: "A at the end".
func CameraWords(post string) string {
	if camera, atEnd := strings.CutSuffix(post, endOfTrack); atEnd {
		return camera + " at the end"
	}
	return post
}
