package frame

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

// personThing is somebody who should not be seen: where they are, and at each of their marks.
func personThing(p *plan.Person) thing {
	stances, marks := [][]plan.Part{p.Parts}, []string{""}
	for i := range p.Marks {
		stances, marks = append(stances, p.Marks[i].Parts), append(marks, p.Marks[i].Name)
	}
	return thing{kind: Person, name: p.Name, marks: marks, path: "people." + p.Name, span: p.Span, foot: p.At, base: p.Base, ownHeight: p.Crown,
		at: func(by r3.Vec) (all [][]body.Piece) {
			for _, parts := range stances {
				var pieces []body.Piece
				for i := range parts {
					ring := make([]r2.Vec, len(parts[i].Outline))
					for k, c := range parts[i].Outline {
						ring[k] = r2.Add(c, plan.InPlan(by))
					}
					pieces = append(pieces, body.Prism(body.Whole, ring, parts[i].Z0+by.Z, parts[i].Z1+by.Z))
				}
				all = append(all, pieces)
			}
			return all
		}}
}
