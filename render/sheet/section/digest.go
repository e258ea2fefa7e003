package section

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/match"
	"scrimshaw/plan/shot"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Digest is the little that the pages of a day need of a set-up once its own are drawn: everything else of it is let go.
type Digest struct {
	Name     string
	Sequence string   // which set-ups it is cut together with; "" where the scene writes none
	Cameras  []string // each with its lens
	Frames   []string // of whom, and how close
	Others   []string // people whom no camera is on
	Lights   int      // that are up
	Rooms    []plan.Room
	Walls    []plan.WallPiece
	Openings [][4]r2.Vec // their corners in plan, m
	Marks    []Mark
	Assumed  []plan.Assumption // each with its thing as the crew reads it
	Cautions []Caution
	Tags     []string // the numbers of its lights
	Looks    []match.Look
	Cued     bool     // cues change its lights: its looks are those before the first
	Revised  *Revised // nil: nobody asks
}

// Mark is where something stands.
type Mark struct {
	Kind    MarkKind
	Tag     string
	At, Way r2.Vec // in plan, m; which way a camera looks: a unit vector
}

// MarkKind is what a mark stands for.
type MarkKind uint8

// The kinds of marks.
const (
	LightMark MarkKind = iota
	CameraMark
	PersonMark
)

// DigestOf is what is kept of a set-up.
func DigestOf(in *Input) Digest {
	s := in.Setup
	d := Digest{Name: s.Name, Sequence: s.Sequence, Rooms: s.Rooms, Walls: s.Walls, Cautions: in.Cautions, Tags: lightTags(s), Looks: in.Looks, Cued: len(s.Cues) > 0, Revised: revisedOf(in)}
	for i := range s.Openings {
		o := &s.Openings[i]
		out := r2.Scale(o.Depth, o.Outward)
		d.Openings = append(d.Openings, [4]r2.Vec{o.Left, o.Right, r2.Add(o.Right, out), r2.Add(o.Left, out)})
	}
	for i := range s.Lights {
		l := &s.Lights[i]
		if l.RelativeOutput.Y() > 0 {
			d.Lights++
			d.Marks = append(d.Marks, Mark{Kind: LightMark, Tag: l.Tag, At: plan.InPlan(l.Frame.At)})
		}
	}
	shown := map[string]bool{}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		d.Cameras = append(d.Cameras, Joined(" ", c.Name, c.LensWords()))
		d.Marks = append(d.Marks, Mark{Kind: CameraMark, Tag: c.Name, At: plan.InPlan(c.Frame.At), Way: plan.InPlan(c.Frame.Axis)})
		if subject := shot.By(s, c).Subject; c.Lens > 0 && subject != nil {
			d.Frames = append(d.Frames, Joined(" ", subject.Name+",", string(subject.Size)))
			shown[subject.Name] = true
		}
	}
	for i := range s.People {
		p := &s.People[i]
		if !shown[p.Name] {
			d.Others = append(d.Others, p.Name)
		}
		d.Marks = append(d.Marks, Mark{Kind: PersonMark, Tag: p.Name, At: plan.InPlan(p.Face.At)})
	}
	for _, a := range s.Assumed {
		a.Thing = thingName(s, a.Thing)
		d.Assumed = append(d.Assumed, a)
	}
	return d
}

// Content is a line of the contents of a packet.
type Content struct {
	What, Of string // what the pages are
	Sheet    int    // the number of the first
	Revised  bool   // not as on the sheets before
	To       string // its name
}

// Contents is the section that says what a packet holds.
func Contents(lines []Content) *Section {
	t := Table{Columns: []Column{{Head: "sheet", Align: ink.Right}, {Head: "what", Strong: true}, {Flexible: true}}}
	for _, l := range lines {
		t.Entries = append(t.Entries, Entry{Cells: []string{fmt.Sprint(l.Sheet), l.What, l.Of}, Link: l.To, Revised: l.Revised})
	}
	return &Section{Title: "Contents", Tables: []Table{t}}
}

// Line says of a set-up what it is: its sequence, cameras, who is in it, how many lights.
func (d *Digest) Line() string {
	return Joined("; ", Prefixed("sequence ", d.Sequence), strings.Join(d.Cameras, ", "), strings.Join(d.Frames, ", "), Prefixed("with ", strings.Join(d.Others, ", ")), Count(d.Lights, "light"))
}

// ContactRoles are those whom a crew on location has to reach: common practice of a call sheet. Who they are is written in by hand.
func ContactRoles() []string {
	return []string{"Production", "Director of photography", "Gaffer", "Key grip", "First assistant camera", "Location", "Rental desk", "Nearest hospital"}
}

// CommonAssumed are the defaults that decide numbers in every set-up of a day. What one set-up assumes besides stands on its own pages.
func CommonAssumed(all []Digest) *Section {
	q := &Section{Title: "Assumed in all set-ups", Rank: layout.Other}
	if len(all) == 0 {
		return q
	}
	var things []string
	assumed := map[string][]string{} // by thing
	for _, a := range all[0].Assumed {
		if slices.ContainsFunc(all, func(d Digest) bool { return !slices.Contains(d.Assumed, a) }) {
			continue
		}
		if assumed[a.Thing] == nil {
			things = append(things, a.Thing)
		}
		assumed[a.Thing] = append(assumed[a.Thing], Joined(" ", a.What, a.Value))
	}
	for _, g := range gathered(things, assumed) {
		q.Words = append(q.Words, strings.Join(g.things, ", ")+": "+g.words)
	}
	return q
}

// DayCautions are the cautions of all set-ups, each once, with the numbers of all that it is about in any of them.
func DayCautions(all []Digest) *Section {
	var day []Caution
	var lights []string
	for i := range all {
		for _, tag := range all[i].Tags {
			lights = append(lights, missing(lights, tag)...)
		}
		for _, c := range all[i].Cautions {
			at := slices.IndexFunc(day, func(d Caution) bool { return d.Text == c.Text })
			if at < 0 {
				at, day = len(day), append(day, Caution{Text: c.Text})
			}
			day[at].Winds = lowestWinds(day[at].Winds, c.Winds)
			for _, tag := range c.Tags {
				day[at].Tags = append(day[at].Tags, missing(day[at].Tags, tag)...)
			}
		}
	}
	slices.SortStableFunc(day, func(a, b Caution) int { return cmp.Compare(min(1, len(b.Tags)), min(1, len(a.Tags))) }) // what is about all comes last
	return &Section{Title: "Cautions", Points: cautionPoints(day, lights)}
}

// missing is a word that others lack.
func missing(all []string, word string) []string {
	if slices.Contains(all, word) {
		return nil
	}
	return []string{word}
}

// Unchecked is the section of what nobody has checked.
func Unchecked(lines []string) *Section { return unchecked(&Input{Unchecked: lines}) }

// UncheckedLine says on one line what nobody has checked, for the foot of every page, and that a cover says more where there is one.
func UncheckedLine(lines []string, covered bool) string {
	var all []string
	for _, l := range lines {
		head, rest, named := strings.Cut(l, ":")
		if !named {
			head = strings.TrimSuffix(rest+l, ".")
		}
		all = append(all, strings.ToLower(head[:1])+head[1:])
	}
	if len(all) == 0 {
		return ""
	}
	line := "Not checked: " + strings.Join(all, "; ") + "."
	if covered {
		line += " The cover says it whole."
	}
	return line
}
