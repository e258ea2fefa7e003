package plan

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Mark is where somebody is at one moment of the scene, and how. It means what the same fields of a Person do.
type Mark struct {
	Name  string  // with the person's before it: "marta.sit"
	At    r2.Vec  // m
	Base  float64 // z, m
	Pose  term.Pose
	Crown float64 // z, m
	Eyes  float64 // z, m
	Faces float64 // degrees
	Face  Frame
	Parts []Part
	Span  source.Span
}

// AtMark is somebody as they are at a mark. Their solids are those of their own place: nobody stands in two.
func (p *Person) AtMark(m *Mark) Person {
	at := *p
	at.Name, at.At, at.Base, at.Pose, at.Crown, at.Eyes = m.Name, m.At, m.Base, m.Pose, m.Crown, m.Eyes
	at.Faces, at.Face, at.Parts, at.Span = m.Faces, m.Face, m.Parts, m.Span
	at.Marks, at.Walk = nil, nil
	return at
}

// Posts are all people with a face to read: everybody where they are, and after each as they are at their marks.
func (s *Setup) Posts() []Person {
	var all []Person
	for i := range s.People {
		p := &s.People[i]
		all = append(all, *p)
		for k := range p.Marks {
			all = append(all, p.AtMark(&p.Marks[k]))
		}
	}
	return all
}

// Post is that of a name, a person's or a mark's; nil where there is none.
func (s *Setup) Post(name string) *Person {
	for i := range s.People {
		p := &s.People[i]
		if p.Name == name {
			return p
		}
		for k := range p.Marks {
			if m := &p.Marks[k]; m.Name == name {
				at := p.AtMark(m)
				return &at
			}
		}
	}
	return nil
}
