package meter

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// Lesson is what there is to learn from the light on one face, for a camera that looks at it. Package teach works it out.
type Lesson struct {
	Person    string
	Camera    string   // as views name it, "A.end" at the end of its track; "" where none sees the face: angles are then from the nose
	Missing   string   // why there is nothing to teach, a sentence; "" where there is
	Side      string   // the person's own side that the key lights: "left" or "right"
	Stops     *float64 // log2 of key side over fill side; nil where that is dark, as is Ratio
	Ratio     *float64 // the ratio of key side to fill side, as both are metered
	Lights    []LessonLight
	Sentences []Sentence

	Uncomputed []plan.Uncomputed // keys that could change its light and that nothing computes yet
}

// LessonLight is one light of a lesson, the key first.
type LessonLight struct {
	Light, Numbered, Tag string
	Role                 term.Role // that it plays for the face: key, fill, edge, hair; "" of others
	Written              bool      // the scene gives it that role
	By                   string    // the surface, cloth or mirror that most of its light comes from last; "" where that is the lamp
	Path                 string    // and how: diffused, mirrored, reflected
	Part                 float64   // the share of its light that comes so
	At                   *r3.Vec   // where that light comes from, m; nil where nobody can say in one place
	Distance             float64   // from the face to there, m
	Turn                 float64   // in plan from the line face to camera, or from where the person faces, degrees: plus is camera right, or own right
	FromNose             float64   // about the axis of the head from the nose, degrees: plus is own right
	Height               float64   // over the eye line, degrees
	Wide, High           float64   // how large it looks from the face, degrees; 0 of a point
	Key, Fill, Back      float64   // what it gives to the key side, the fill side, and the back of the head where that has the most of it, lx
}

// Sentence is a sentence of a lesson with the figures in it.
type Sentence struct {
	About   string // its subject: key, sides, ratio, distance, size, edge
	Text    string
	Figures []Figure
}

// Figure is a number of a sentence, in a unit, and how the sentence prints it.
type Figure struct {
	Name  string
	Value float64 // in Unit, which is m, lx, °, % and so on
	Unit  string
	Words string
}

// String is the figure as it is printed.
func (f Figure) String() string { return f.Words }

// Role is the light of a lesson that plays a role first; nil where none does.
func (l *Lesson) Role(roles ...term.Role) *LessonLight {
	for i := range l.Lights {
		for _, r := range roles {
			if l.Lights[i].Role == r {
				return &l.Lights[i]
			}
		}
	}
	return nil
}
