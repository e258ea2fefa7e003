package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// eye is a camera that looks at the things that it should not see: from where it stands, or from places all along its track.
type eye struct {
	*viewing
	camera *plan.Camera
	things []thing
	sights []Sight   // of the things
	posts  []*post   // in their order along the track; the last may be out of it, where things showed between two others
	track  int       // how many of them are in their order
	moved  moved     // the thing that was looked at last where it is moved to
	last   lastPlace // the post that something showed from
	others []*eye    // all cameras, by which a move is judged
}

// post is a camera at one place, and what it sees from there.
type post struct {
	along  float64 // m from the start of its track
	camera *plan.Camera
	picture
	seen map[*thing][][]seenPart // of what it should not see of a thing, stance by stance
}

// moved is what a thing is made of once it is moved.
type moved struct {
	thing   *thing
	by      r3.Vec
	stances [][]body.Piece
}

// trackStep is how far apart the places of a track are at most that a camera looks from, m; on one that is too long for mostPosts, as far
// as that takes. trackGrain is how near to the worst place what is found lies, m.
const (
	trackStep  = 0.1
	mostPosts  = 200
	trackGrain = 1e-3
)

func newEye(v *viewing, c *plan.Camera) *eye {
	e := &eye{viewing: v, camera: c}
	for _, t := range v.things(c.Name) {
		if t.kind != Camera || t.name != c.Name {
			e.things = append(e.things, t)
		}
	}
	for _, d := range lookedFrom(c) {
		e.posts = append(e.posts, e.post(d))
	}
	e.track = len(e.posts)
	return e
}

// lookedFrom are the places of its track that a camera looks from, m from the start: of one that stands its own.
func lookedFrom(c *plan.Camera) []float64 {
	if c.Track == nil {
		return []float64{0}
	}
	return plane.AlongSteps(c.Track.Corners, max(trackStep, c.Track.Length()/mostPosts))
}

// post is the camera so far along its track.
func (e *eye) post(along float64) *post {
	at := e.camera.OnTrack(along)
	return &post{along: along, camera: &at, picture: pictureOf(&at), seen: map[*thing][][]seenPart{}}
}

// worst is a thing from the place of the track from which most of it shows, or it comes nearest.
func (e *eye) worst(t *thing) Sight {
	if e.track == 1 {
		return e.sight(t, e.posts[0])
	}
	sights := map[float64]Sight{}
	along := e.peak(func(p *post) float64 {
		s := e.sight(t, p)
		sights[p.along] = s
		return s.rank()
	})
	s := sights[along]
	s.Track = &Stretch{Worst: along, From: along, To: along}
	if s.Shows() {
		s.Track.From, s.Track.To = e.stretch(t, along, sights)
	}
	return s
}

// peak finds the place of the track at which a rank is highest: between places a step apart that are no lower than those beside them by
// halving, and so a place that one passes between two of them.
func (e *eye) peak(rank func(*post) float64) (along float64) {
	var ranks []float64 // at the posts
	best := math.Inf(-1)
	take := func(p *post, r float64) {
		if r > best {
			along, best = p.along, r
		}
	}
	for _, p := range e.posts[:e.track] {
		r := rank(p)
		ranks = append(ranks, r)
		take(p, r)
	}
	for i, r := range ranks {
		before, after := max(i-1, 0), min(i+1, len(ranks)-1)
		if math.IsInf(r, -1) || r < ranks[before] || r < ranks[after] {
			continue
		}
		low, middle, high := e.posts[before].along, e.posts[i], e.posts[after].along
		for high-low > trackGrain {
			left, right := e.post((low+middle.along)/2), e.post((middle.along+high)/2)
			atLeft, atRight := rank(left), rank(right)
			switch {
			case atLeft > r && atLeft >= atRight:
				high, middle, r = middle.along, left, atLeft
			case atRight > r:
				low, middle, r = middle.along, right, atRight
			default:
				low, high = left.along, right.along
			}
		}
		take(middle, r)
	}
	return along
}

// stretch is from where to where on the track a thing shows that shows at a place, by all places that it was looked at from: what shows for a moment
// between two posts was found there.
func (e *eye) stretch(t *thing, along float64, sights map[float64]Sight) (from, to float64) {
	from, to = along, along
	for at, s := range sights {
		if s.Shows() {
			from, to = min(from, at), max(to, at)
		}
	}
	first, last := math.Inf(-1), math.Inf(1) // the places before and after, from which it does not show
	for at := range sights {
		if at < from {
			first = max(first, at)
		} else if at > to {
			last = min(last, at)
		}
	}
	if !math.IsInf(first, -1) {
		from = e.edge(t, first, from)
	}
	if !math.IsInf(last, 1) {
		to = e.edge(t, last, to)
	}
	return from, to
}

// edge is where between a place from which a thing does not show and one from which it does that begins.
func (e *eye) edge(t *thing, out, in float64) float64 {
	for math.Abs(in-out) > trackGrain {
		if middle := (in + out) / 2; e.showsFrom(t, e.post(middle)) {
			in = middle
		} else {
			out = middle
		}
	}
	return in
}

// showsFrom says whether something of a thing shows from a place that should not.
func (e *eye) showsFrom(t *thing, p *post) bool {
	for _, pieces := range t.stances {
		if e.shows(t.unmeant(e.camera.Name, pieces), p.picture) {
			return true
		}
	}
	return false
}

// at is what a thing is made of where it is moved by a vector. From all places of a track it is asked for one after the other.
func (e *eye) at(t *thing, by r3.Vec) [][]body.Piece {
	if e.moved.thing != t || e.moved.by != by {
		e.moved = moved{t, by, t.at(by)}
	}
	return e.moved.stances
}

// postOf is where a sight is from.
func (e *eye) postOf(s *Sight) *post {
	if s.Track == nil {
		return e.posts[0]
	}
	return e.post(s.Track.Worst)
}

// clears is a least change after which nothing shows from anywhere on the track, as clearing finds it. What shows between two posts
// after it is looked at from there, too, and the change is looked for again.
func (e *eye) clears(most float64, round func(float64) float64, shows func(p *post, change float64) bool, rank func(p *post, change float64) float64) (least, rounded float64, ok bool) {
	for range mostSteps {
		least, rounded, ok = clearing(most, round, func(change float64) bool { return e.anywhere(func(p *post) bool { return shows(p, change) }) })
		if !ok || e.track == 1 {
			return least, rounded, ok
		}
		along := e.peak(func(p *post) float64 { return rank(p, rounded) })
		p := e.post(along)
		if !shows(p, rounded) {
			return least, rounded, true
		}
		e.posts = append(e.posts, p)
	}
	return 0, 0, false
}

// anywhere says whether something holds at one of the posts.
func (e *eye) anywhere(holds func(p *post) bool) bool {
	return e.last.anywhere(len(e.posts), func(i int) bool { return holds(e.posts[i]) })
}

// lastPlace is the place of a track at which something held last.
type lastPlace int

// anywhere says whether something holds at one of so many places. The last one is asked first, for most often it holds there again.
func (l *lastPlace) anywhere(places int, holds func(i int) bool) bool {
	last := int(*l)
	if last < places && holds(last) {
		return true
	}
	for i := range places {
		if i != last && holds(i) {
			*l = lastPlace(i)
			return true
		}
	}
	return false
}

// sight looks at one thing from one place of a camera.
func (v *viewing) sight(t *thing, p *post) Sight {
	s := Sight{Camera: p.camera.Name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span, Outside: math.Inf(1), Meant: t.seen.For(p.camera.Name)}
	if !p.grown(max(farthest, p.camera.Room)).mayShow(t.middle, t.radius) {
		return s
	}
	if s.Meant {
		v.meant(t, p, &s)
	}
	worst := s
	for i, pieces := range t.stances {
		one := s
		if i < len(t.marks) {
			one.Mark = t.marks[i]
		}
		if v.look(&one, t.unmeant(s.Camera, pieces), p); i == 0 || one.rank() > worst.rank() {
			worst = one
		}
	}
	return worst
}

// meant looks at what of a thing is meant to be in the picture from a place of a camera.
func (v *viewing) meant(t *thing, p *post, s *Sight) {
	at := spreadOf(v.seenOf(t.meantPieces(s.Camera), p.At), p.picture)
	s.Shown, s.ShownAt = at.share(), at.where()
}

// look finds what of some pieces shows from a place of a camera, or how near the frame they come.
func (v *viewing) look(s *Sight, pieces []body.Piece, p *post) {
	if len(pieces) == 0 {
		return
	}
	seen := v.seenOf(pieces, p.At)
	if showsOf(seen, p.picture) {
		s.Outside = 0
		at := spreadOf(seen, p.picture)
		s.Share, s.Where, s.Parts = at.share(), at.where(), at.shown()
		return
	}
	s.Outside, s.Hidden = outside(seen, p.picture), inFrame(pieces, p.picture)
	s.nearest(seen, p.picture)
}

// rankOf is how much of what is seen shows in a picture, or how near it comes, as a Sight ranks.
func rankOf(seen []seenPart, p picture) float64 {
	if showsOf(seen, p) {
		s := spreadOf(seen, p)
		return max(s.share(), leastShare)
	}
	return -outside(seen, p)
}
