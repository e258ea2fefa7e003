package meter

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/unit"
)

// Track is how what a camera makes of its subjects changes along its track.
type Track struct {
	Camera  string
	Length  float64 // m
	Changes []TrackChange
}

// TrackChange is a place of a track from which on the picture is another.
type TrackChange struct {
	Along  float64 // m from the start
	Person string  // who it is of; "" nobody is in frame from there on
	Size   shot.Size
	From   Lean // which side of the face it looks from there on; "" of a size
}

// trackStep is how far apart the places are at least that a track is looked at, m; what changes between two of them is found by halving,
// to trackGrain.
const (
	trackStep  = 0.1
	trackGrain = 1e-4
)

// tracksOf are the tracks of a set-up, with the sides of the faces that have a key side and are in frame.
func tracksOf(s *plan.Setup, faces []Face) (all []Track) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if c.Track == nil {
			continue
		}
		t := Track{Camera: c.Name, Length: c.Track.Length()}
		if c.Lens > 0 {
			changesAlong(c.Track, func(along float64) TrackChange { return framedFrom(s, c, along) }, t.add)
		}
		for k := range faces {
			f := &faces[k]
			if f.Contrast != nil && unit.EqualStops(f.Contrast.Stops) {
				continue // no side of it is darker
			}
			p := s.Post(f.Person)
			if p == nil || !p.SeenBy(c.Name) {
				continue
			}
			changesAlong(c.Track, func(along float64) TrackChange { return lookFrom(p, f.Side, c, along) }, func(change TrackChange) {
				if at := c.OnTrack(change.Along); shot.Frames(&at, p) {
					t.add(change)
				}
			})
		}
		all = append(all, t)
	}
	return all
}

// add puts a change in after those before it along the track.
func (t *Track) add(c TrackChange) {
	i := len(t.Changes)
	for i > 0 && t.Changes[i-1].Along > c.Along {
		i--
	}
	t.Changes = append(t.Changes[:i], append([]TrackChange{c}, t.Changes[i:]...)...)
}

// framedFrom is how a camera frames whom it is focused on, so far along its track.
func framedFrom(s *plan.Setup, c *plan.Camera, along float64) TrackChange {
	at := c.OnTrack(along)
	subject := shot.By(s, &at).Subject
	if subject == nil {
		return TrackChange{}
	}
	return TrackChange{Person: subject.Name, Size: subject.Size}
}

// lookFrom is which side of a face a camera looks from, so far along its track.
func lookFrom(p *plan.Person, side string, c *plan.Camera, along float64) TrackChange {
	at := c.OnTrack(along)
	_, from := seenFrom(&p.Face, side, &at.Frame)
	return TrackChange{Person: p.Name, From: from}
}

// changesAlong calls add with what holds from each place of a track on at which something is no longer what it was.
func changesAlong(t *plan.Track, what func(along float64) TrackChange, add func(TrackChange)) {
	steps := plane.AlongSteps(t.Corners, trackStep)
	from, now := 0.0, what(0)
	for _, to := range steps[1:] {
		for next := what(to); next != now; {
			low, high, is := from, to, next
			for high-low > trackGrain {
				middle := (low + high) / 2
				if at := what(middle); at == now {
					low = middle
				} else {
					high, is = middle, at
				}
			}
			from, now = high, is
			is.Along = high
			add(is)
		}
		from = to
	}
}

// words say a change: "medium close-up of ada", "A looks from the shadow side of ada".
func (c *TrackChange) words(camera string) string {
	switch {
	case c.Person == "":
		return "nobody in frame"
	case c.From == FromFront:
		return camera + " looks straight at the nose of " + c.Person
	case c.From == FromBehind:
		return camera + " looks from behind " + c.Person
	case c.From != "":
		return camera + " looks from the " + string(c.From) + " side of " + c.Person
	}
	return string(c.Size) + " of " + c.Person
}

// ChangeWords say what changes along a track, lengths written in a way, a line for each place: "from 1.35 m on: medium close-up of ada".
func (t *Track) ChangeWords(length func(metres float64) string) (lines []string) {
	for i := range t.Changes {
		c := &t.Changes[i]
		lines = append(lines, "from "+length(c.Along)+" on: "+c.words(t.Camera))
	}
	return lines
}

// TrackOf returns a camera's track, or nil.
func (s *Set) TrackOf(camera string) *Track {
	for i := range s.Tracks {
		if s.Tracks[i].Camera == camera {
			return &s.Tracks[i]
		}
	}
	return nil
}

// table adds what changes along a track to the lines of its camera.
func (t *Track) table(b *strings.Builder, length func(metres float64) string) {
	b.WriteString("  on a track of " + length(t.Length) + "\n")
	for _, line := range t.ChangeWords(length) {
		b.WriteString("  " + line + "\n")
	}
}
