package change

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/term"
)

// Stage is when in a change of set-up a line is worked.
type Stage uint8

// The stages in order. Lamps go off before anything else, so that they cool while the rest is done; what leaves makes room for what comes;
// furniture and marks say where people are, and cameras what must be clear of stands; stands before heads, heads before what goes on them,
// and levels and aims last, for they are set by what all of that gives.
const (
	GoOff   Stage = iota // lamps that are off in the next set-up
	Clear                // what leaves
	Dress                // furniture, doors, marks, people
	Frame                // cameras
	Rig                  // what stands, comes or moves
	Heads                // other units and modifiers, doors, scrims, focus, cuts
	Sheets               // gels and cloth
	Plug                 // circuits
	SetTo                // levels and colours
	AimLast              // where heads point
)

// Part is one aspect of a thing that is not as it was.
type Part struct {
	Aspect  Aspect
	Was, Is Value
}

// Line is one kind of work on one thing: what a crew ticks off.
type Line struct {
	Stage Stage
	Work  term.Work
	Sort  Sort
	Name  string // in the file
	Tag   string // on the plan
	Parts []Part // aspects that differ, in the order of the facts of the thing; of one that comes or goes all that it has

	Follows    string   // the thing that it moves or turns with, being placed by it or aimed at it; "" none
	Hands      []Reason // why two people do it; none: one can
	HotMinutes float64  // how long the head stays hot once it is off; 0: it does not, or nobody touches it
	Holds      []string // the names of what stands on it and has to come off first
	Rate       *float64 // how long it takes by the rates of the scene, minutes; nil: these say nothing of it
}

// List is what is done between two set-ups.
type List struct {
	Before, Now string
	Lines       []Line
}

// Part is the part of a line of an aspect; nil where that is as it was.
func (l *Line) Part(a Aspect) *Part {
	for i := range l.Parts {
		if l.Parts[i].Aspect == a {
			return &l.Parts[i]
		}
	}
	return nil
}

// Between is what turns one state into the next, in an order that can be worked.
func Between(before, now *State) *List {
	out := &List{Before: before.Setup, Now: now.Setup, Lines: now.rated(difference(before, now))}
	follow(out.Lines, now)
	holds(out.Lines, before, now)
	arrange(out.Lines, before, now)
	return out
}

// difference is what turns one state into the next, in no order that anybody could work.
func difference(before, now *State) (lines []Line) {
	for i := range now.Things {
		is := &now.Things[i]
		was := before.Find(is.Sort, is.Name)
		if was == nil {
			lines = append(lines, comes(is))
			continue
		}
		for _, p := range differing(was, is) {
			lines = addPart(lines, was, is, p)
		}
	}
	for i := range before.Things {
		if was := &before.Things[i]; now.Find(was.Sort, was.Name) == nil {
			lines = append(lines, goes(was))
		}
	}
	for i := range lines {
		lines[i].Stage = stageOf(&lines[i])
	}
	return lines
}

func lineOf(t *Thing, w term.Work) Line { return Line{Work: w, Sort: t.Sort, Name: t.Name, Tag: t.Tag} }

func comes(t *Thing) Line {
	l := lineOf(t, workOf(t.Sort, Comes))
	for _, f := range t.Facts {
		l.Parts = append(l.Parts, Part{Aspect: f.Aspect, Is: f.Value})
	}
	l.Parts = append(l.Parts, Part{Aspect: Comes})
	l.Hands = t.hands
	return l
}

func goes(t *Thing) Line {
	l := lineOf(t, workOf(t.Sort, Goes))
	for _, f := range t.Facts {
		l.Parts = append(l.Parts, Part{Aspect: f.Aspect, Was: f.Value})
	}
	l.Parts = append(l.Parts, Part{Aspect: Goes})
	l.Hands, l.HotMinutes = t.hands, t.hot
	return l
}

// addPart adds what differs to the line of its work on the same thing, which is the last of the lines or near it.
func addPart(lines []Line, was, is *Thing, p Part) []Line {
	work := workOf(is.Sort, p.Aspect)
	for i := len(lines) - 1; i >= 0 && lines[i].Sort == is.Sort && lines[i].Name == is.Name; i-- {
		if lines[i].Work == work {
			lines[i].Parts = append(lines[i].Parts, p)
			return lines
		}
	}
	l := lineOf(is, work)
	l.Parts = []Part{p}
	if touchesHead(work) {
		l.HotMinutes = was.hot
	}
	if takesHands(work) {
		l.Hands = slices.Clone(was.hands)
		for _, r := range is.hands {
			if !slices.Contains(l.Hands, r) {
				l.Hands = append(l.Hands, r)
			}
		}
	}
	return append(lines, l)
}

// stages are those of the works on what lights and shapes light.
var stages = map[term.Work]Stage{
	term.Struck: Clear, term.Placed: Rig, term.Moved: Rig, term.Swapped: Heads, term.Fitted: Heads, term.Gelled: Sheets, term.Clothed: Sheets,
	term.Cabled: Plug, term.Levelled: SetTo, term.Coloured: SetTo, term.Aimed: AimLast,
}

// stageOf is when a line is worked.
func stageOf(l *Line) Stage {
	level := l.Part(Level)
	switch {
	case l.Part(Goes) != nil && l.Sort != Camera:
		return Clear
	case l.Sort == Camera || l.Sort == Exposure:
		return Frame
	case l.Sort == Furniture || l.Sort == Opening || l.Sort == Person || l.Sort == Mark:
		return Dress
	case l.Work == term.Swapped && l.Part(Hold) != nil:
		return Rig
	case l.Work == term.Levelled && level != nil && level.Is.Figures[0] == 0:
		return GoOff
	}
	return stages[l.Work]
}

// Cools are the numbers of the lamps that are on and hot and are touched: they go off before anything else.
func (l *List) Cools() (tags []string, least, most float64) {
	least = math.Inf(1)
	for i := range l.Lines {
		n := &l.Lines[i]
		if n.HotMinutes == 0 {
			continue
		}
		least, most = math.Min(least, n.HotMinutes), math.Max(most, n.HotMinutes)
		if !slices.Contains(tags, n.Tag) {
			tags = append(tags, n.Tag)
		}
	}
	return tags, least, most
}

// rated gives each line its time by the rates of the scene.
func (s *State) rated(lines []Line) []Line {
	for i := range lines {
		for k := range s.Rates {
			if s.Rates[k].Work == lines[i].Work {
				lines[i].Rate = &s.Rates[k].Minutes
			}
		}
	}
	return lines
}

// follow says of what moves or turns with what.
func follow(lines []Line, now *State) {
	gone := map[string]bool{}
	for i := range lines {
		l := &lines[i]
		gone[l.Name] = gone[l.Name] || l.Part(Comes) == nil && l.Part(Goes) == nil && (l.Part(Place) != nil || l.Part(Turn) != nil || l.Part(Pose) != nil)
	}
	for i := range lines {
		l := &lines[i]
		t := now.Find(l.Sort, l.Name)
		if t == nil || l.Part(Comes) != nil {
			continue
		}
		names := t.at
		if l.Part(Place) != nil {
			names = t.by
		} else if l.Part(Aim) == nil && l.Part(Turn) == nil {
			continue
		}
		for _, name := range names {
			owner, _, _ := strings.Cut(name, ".")
			if name != l.Name && (gone[name] || gone[owner] && now.Find(Mark, name) == nil) {
				l.Follows = name
				break
			}
		}
	}
}

// holds says of what moves or leaves what stands on it and does not leave before it.
func holds(lines []Line, before, now *State) {
	for i := range lines {
		l := &lines[i]
		if l.Sort != Furniture || l.Part(Goes) == nil && l.Part(Place) == nil && l.Part(Piece) == nil || l.Part(Comes) != nil {
			continue
		}
		for k := range before.Things {
			t := &before.Things[k]
			if t.on == l.Name && now.Find(t.Sort, t.Name) != nil {
				l.Holds = append(l.Holds, t.Name)
			}
		}
	}
}

// Move is how a thing goes from one place to another.
type Move struct {
	From, To r3.Vec  // m
	Plan     float64 // how far on the floor, m
	Rise     float64 // how far up, m; less than 0: down
	Foot     float64 // how far on the floor what carries it goes, m
	Support  bool    // it stands on another thing than before
}

// Move is that of a line; ok is false where nothing moves.
func (l *Line) Move() (m Move, ok bool) {
	p := l.Part(Place)
	if p == nil || len(p.Was.Figures) == 0 || len(p.Is.Figures) == 0 {
		return m, false
	}
	m.From, m.To = vector(p.Was.Figures), vector(p.Is.Figures)
	m.Plan, m.Rise = math.Hypot(m.To.X-m.From.X, m.To.Y-m.From.Y), m.To.Z-m.From.Z
	m.Foot = m.Plan
	if len(p.Was.Figures) >= 2*coordSize && len(p.Is.Figures) >= 2*coordSize {
		a, b := vector(p.Was.Figures[coordSize:]), vector(p.Is.Figures[coordSize:])
		m.Foot = math.Hypot(b.X-a.X, b.Y-a.Y)
	}
	m.Support = !slices.Equal(p.Was.Words, p.Is.Words)
	return m, true
}
