package scene

import (
	"maps"
	"slices"
	"strconv"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var (
	pose = withSynonyms(source.Vocabulary("a pose", term.Poses), otherPoses)
	eyes = quantity("an eye height", "1.2", lengths, between(0.05, maxHeight))
)

var personTable = tableOf("person", "Someone in the scene.", nil,
	value("at", place, func(p *Person) *Given[Place] { return &p.At }, "Where the person is.", "[1.2, 2.0]", "").needed(),
	value("faces", faces, func(p *Person) *Given[Aim] { return &p.Faces }, "Where the nose points; a point `[x, y]` is one of the plan.", "A", "the first camera, else down the sheet"),
	value("height", quantity("a person's height", "1.7", lengths, between(0.3, 2.6)),
		func(p *Person) *Given[float64] { return &p.Height },
		"Height of the crown, standing.", "1.62", inMetres(DefaultPersonHeight, 2)),
	value("pose", pose, func(p *Person) *Given[term.Pose] { return &p.Pose },
		"Standing, seated, propped, lying or crouching.", "seated", string(term.Standing)),
	value("eyes", eyes, func(p *Person) *Given[float64] { return &p.Eyes },
		"Height of the eyes above the floor; above the deck, or what else one stands on.", "1.18", defaultEyes()),
	into("skin", skinReader("a skin", "0.35"),
		func(p *Person, v Surface, n *source.Node) {
			p.Skin = given(v, n)
			p.noteCatalogueName("skin", "material", v.materialName(n))
		},
		"Reflectance of the skin, or a material. There is no default complexion.",
		"0.35", "none: no skin figure, and the head returns light as the clothes do"),
	into("wears", skinReader("clothes", "0.20"),
		func(p *Person, v Surface, n *source.Node) {
			p.Wears = given(v, n)
			p.noteCatalogueName("wears", "material", v.materialName(n))
		},
		"Reflectance of the clothes, or a material.", "0.20", strconv.FormatFloat(DefaultClothesReflectance, 'f', 2, 64)),
	marks(),
	into("walk", source.ListOf("a walk", "[[1.2, 2.0], [2.4, 2.0]]", place, 2, 100),
		func(p *Person, v []Place, n *source.Node) { p.Walk, p.WalkPlaces = n, v },
		"The path of the face of someone who walks upright, by all its places: it starts at the first of them, wherever the person is. "+
			"Of somebody who stands the face lies a hand's breadth before their place, and is read there: begin the walk there to have the same. "+
			"Light is read every half metre and at the ends, without the body of the person.", "[[1.2, 2.0], {by: A, toward: desk, distance: 2}]", "none"),
	into("seen", seen, func(p *Person, v []Ref, n *source.Node) {
		p.Seen, p.SeenBy = Given[bool]{Value: n.Text != "false", Set: true, Span: n.Span}, v
	},
		"Whether they are meant to be in the picture: true, false, or the cameras. Of who is not, a reader beside the camera or a crew member, review says "+
			"where they show, and the least move; a walk of theirs is not looked at.", "false", "true"),
).meant(otherPersonKeys)

// materialName is the name of a surface's material, where it has one.
func (s Surface) materialName(n *source.Node) Ref { return Ref{Name: s.Material, Span: n.Span} }

// given is a value that is written.
func given[V any](v V, n *source.Node) Given[V] { return Given[V]{Value: v, Set: true, Span: n.Span} }

// skinReader reads a reflectance, or the name of a material.
func skinReader(what, like string) source.Reader[Surface] {
	number := source.Converted(quantity(what, like, shares, between(0, maxReflectance)), func(y float64) Surface { return Surface{Reflectance: y} })
	name := source.Converted(catalogueNameReader(what, like), func(r Ref) Surface { return Surface{Material: r.Name} })
	isNumber := func(n *source.Node) bool { _, err := parseShare(n.Text); return err == nil || n.Kind != source.Scalar }
	return either(what, like, isNumber, number, name)
}

var markTable = tableOf("mark", "Where a person is at one moment of the scene.", nil,
	value("at", place, func(m *MarkPlace) *Given[Place] { return &m.At },
		"Where the person is.", "[2.4, 2.0]", "").needed(),
	value("faces", faces, func(m *MarkPlace) *Given[Aim] { return &m.Faces }, "Where the nose points.", "A", "as the person's own, from the mark"),
	value("pose", pose, func(m *MarkPlace) *Given[term.Pose] { return &m.Pose },
		"The pose at the mark.", "standing", "the person's own"),
	value("eyes", eyes, func(m *MarkPlace) *Given[float64] { return &m.Eyes },
		"Height of the eyes above the floor; above the deck, or what else one stands on.", "1.5", "by the pose"),
)

// maxMarks is how many marks a person may have.
const maxMarks = 50

// readings are the parts of a person that readings are named by; no mark may take their names.
var readings = []string{"key", "fill", "front", "top", "back", "edge", "hair", "left", "right", "own-left", "own-right", "dome", "face", "skin"}

// marks is the key of a person's named marks.
func marks() entry[Person] {
	return entry[Person]{Field: source.Field[Person]{
		Key: "marks", Doc: "Named marks, each as a person's `at`, `faces`, `pose` and `eyes`. The planes of the face are read at each, without the body of the person.", Example: "{sit: {at: [2.4, 2.0], pose: seated}}",
		Default: "none",
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": markTable.Schema()}
		},
		Read: func(p *Person, n *source.Node, c *source.Context) {
			p.Marks, p.MarkPlaces = n, map[string]MarkPlace{}
			if len(n.Keys) > maxMarks {
				c.ErrorAt(n.Keys[maxMarks].Span, CodeTooMany, "leave out the marks that nobody meters", "a person may have %d marks", maxMarks)
				return
			}
			source.Each(n, markTable.Name, c, func(k *source.Key) {
				checkMarkName(k, c)
				m := MarkPlace{Span: k.Span}
				markTable.read(&m, k.Value, c, k.Span)
				p.MarkPlaces[k.Name] = m
			})
		},
	}}
}

// MarkNames are the names of a person's marks, in the order of the file.
func (p *Person) MarkNames() []string {
	if p.Marks == nil {
		return slices.Sorted(maps.Keys(p.MarkPlaces))
	}
	var names []string
	for i := range p.Marks.Keys {
		if name := p.Marks.Keys[i].Name; p.hasMark(name) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func (p *Person) hasMark(name string) bool { _, ok := p.MarkPlaces[name]; return ok }

func checkMarkName(k *source.Key, c *source.Context) {
	if err := checkName(k.Name); err != nil {
		c.Refuse(k.Span, err)
	}
	if slices.Contains(readings, k.Name) {
		c.ErrorAt(k.Span, CodeBadName, "give the mark another name", "a mark cannot be called %q, which is a reading of every face", k.Name)
	}
}

// checkPerson looks at what the keys of a person say together.
func checkPerson(p *Person, _ *source.Node, c *source.Context) {
	if p.Eyes.Set && p.Height.Set && p.Pose.Or(term.Standing) == term.Standing && p.Eyes.Value >= p.Height.Value {
		errorWith(c, p.Eyes.Span, CodeContradicts, "make eyes less than height, or leave them out", p.Height.Span, "the height is here",
			"the eyes of someone standing lie below the crown")
	}
}
