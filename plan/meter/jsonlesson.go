package meter

import "scrimshaw/plan/term"

// jsonLesson is a lesson; its person is null where there is nobody to teach with, and then missing says why.
type jsonLesson struct {
	Person    *string        `json:"person"`
	Camera    *string        `json:"camera"`  // null: angles are from the nose
	Missing   *string        `json:"missing"` // why there is nothing to teach
	Key       *string        `json:"key"`     // the person's own side
	Stops     *float64       `json:"stops"`
	Ratio     *float64       `json:"ratio"` // the ratio of key side to fill side
	Lights    []jsonTaught   `json:"lights"`
	Sentences []jsonSentence `json:"sentences"`

	Uncomputed []jsonKey `json:"uncomputed"`
}

// jsonTaught is a light of a lesson.
type jsonTaught struct {
	Light    string    `json:"light"`
	Number   string    `json:"number"`
	Role     term.Role `json:"role"`     // that it plays; "" of one that plays none
	Written  bool      `json:"written"`  // whether the scene gives it that role
	By       *string   `json:"by"`       // what most of its light comes from last; null: the lamp itself
	Distance *float64  `json:"distance"` // m from the face; null, as the angles are, where it has no one place
	Turn     *float64  `json:"turn"`     // degrees from the line to the camera, plus is camera right
	FromNose *float64  `json:"fromNose"` // degrees, plus is own right
	Height   *float64  `json:"height"`   // degrees over the eye line
	Wide     *float64  `json:"wide"`     // degrees across, from the face
	High     *float64  `json:"high"`     // degrees
	KeySide  float64   `json:"keySide"`  // lx
	FillSide float64   `json:"fillSide"` // lx
	Back     float64   `json:"back"`     // lx
}

type jsonSentence struct {
	About   string       `json:"about"`
	Text    string       `json:"text"`
	Figures []jsonFigure `json:"figures"`
}

type jsonFigure struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"` // in the unit: m, lx, °, % and so on
	Unit  string  `json:"unit"`
	Words string  `json:"words"`
}

func (l *Lesson) json() *jsonLesson {
	if l == nil {
		return nil
	}
	out := &jsonLesson{Person: OrNull(l.Person), Camera: OrNull(l.Camera), Missing: OrNull(l.Missing), Key: OrNull(l.Side),
		Stops: RoundedOrNull(l.Stops), Ratio: RoundedOrNull(l.Ratio), Lights: []jsonTaught{}, Sentences: []jsonSentence{}, Uncomputed: jsonKeys(l.Uncomputed)}
	for i := range l.Lights {
		out.Lights = append(out.Lights, l.Lights[i].json())
	}
	for _, s := range l.Sentences {
		one := jsonSentence{About: s.About, Text: s.Text, Figures: []jsonFigure{}}
		for _, f := range s.Figures {
			one.Figures = append(one.Figures, jsonFigure{f.Name, Rounded(f.Value), f.Unit, f.Words})
		}
		out.Sentences = append(out.Sentences, one)
	}
	return out
}

func (l *LessonLight) json() jsonTaught {
	out := jsonTaught{Light: l.Light, Number: l.Tag, Role: l.Role, Written: l.Written, By: OrNull(l.By),
		KeySide: Rounded(l.Key), FillSide: Rounded(l.Fill), Back: Rounded(l.Back)}
	if l.At != nil {
		out.Distance, out.Turn, out.FromNose = RoundedOrNull(&l.Distance), RoundedOrNull(&l.Turn), RoundedOrNull(&l.FromNose)
		out.Height, out.Wide, out.High = RoundedOrNull(&l.Height), RoundedOrNull(&l.Wide), RoundedOrNull(&l.High)
	}
	return out
}
