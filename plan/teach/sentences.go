package teach

import (
	"cmp"
	"math"
	"strings"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// tell words the lesson: what the key is, what it makes of the two sides, what the fill does, what distance and size do, what
// shows in the eyes, and what the light behind the head adds.
func (t *teacher) tell() {
	for _, say := range []func(*saying){t.tellKey, t.tellSides, t.tellFill, t.tellDistance, t.tellSize, t.tellEdge} {
		var s saying
		if say(&s); s.Text != "" {
			t.lesson.Sentences = append(t.lesson.Sentences, s.Sentence)
		}
	}
}

func (t *teacher) key() *meter.LessonLight { return &t.lesson.Lights[0] }

// straightOn is the angle, degrees, below which something stands in a line and not to a side of it.
const straightOn = 3

// where words from where a light comes: "45° camera left of the line to A and 30° over the eye line, 1.81 m from the face".
func (t *teacher) where(s *saying, l *meter.LessonLight) {
	left, right, line := "own left", "own right", "of where "+t.person.Name+" faces"
	if t.camera != nil {
		left, right, line = "camera left", "camera right", "of the line to "+t.cameraWords()
	}
	switch {
	case math.Abs(l.Turn) < straightOn:
		s.add("in the line "+strings.TrimPrefix(line, "of the line "), "")
	case l.Turn < 0:
		s.add("%s %s %s", angle("turn", l.Turn), left, line)
	default:
		s.add("%s %s %s", angle("turn", l.Turn), right, line)
	}
	switch {
	case math.Abs(l.Height) < 1:
		s.add(", level with the eyes")
	case l.Height > 0:
		s.add(", %s over the eye line", angle("height", l.Height))
	default:
		s.add(", %s under the eye line", angle("height", l.Height))
	}
	s.add(", %s from the face", t.length("distance", l.Distance))
}

// tellKey says which light is the key, from where, and how much of the key side it gives.
func (t *teacher) tellKey(s *saying) {
	s.About = "key"
	key, side := t.key(), t.reading("key")
	s.add("The key is %s", key.Numbered)
	if !key.Written {
		s.add(", as no light gives the key side more")
	}
	if key.By != "" {
		s.add("; %s of its light there comes %s %s", percent("byWay", key.Part), howFrom[key.Path], key.By)
	}
	if key.At != nil {
		s.add(": ")
		t.where(s, key)
	}
	s.add(". It gives %s of the %s on the key side, which calls for %s.", percent("share", key.Key / *side.Lux), t.illuminance("keySide", *side.Lux), t.stop("keyStop", *side.Lux))
	if most := t.mostOnKeySide(); most.Light != key.Light {
		s.add(" %s gives it more, %s.", most.Numbered, percent("more", most.Key / *side.Lux))
	}
}

// mostOnKeySide is the light of the lesson that gives the key side most.
func (t *teacher) mostOnKeySide() *meter.LessonLight {
	most := t.key()
	for i := range t.lesson.Lights {
		if l := &t.lesson.Lights[i]; l.Key > most.Key {
			most = l
		}
	}
	return most
}

// howFrom words how light comes from a surface.
var howFrom = map[string]string{light.Diffused.String(): "through", light.Mirrored.String(): "by", light.Reflected.String(): "off"}

// patterns are the trade's words for where a key stands, by the most it is off the nose, degrees (common practice; people draw
// the lines between them in different places).
var patterns = []struct {
	upTo float64
	word string
}{{20, "a frontal key"}, {60, "a three-quarter key"}, {105, "a side key"}, {150, "a three-quarter back key"}, {180, "a back key"}}

// tellSides says what the key makes of the two sides by itself, and which of them the camera sees more of.
func (t *teacher) tellSides(s *saying) {
	s.About = "sides"
	key := t.key()
	if key.At == nil {
		return
	}
	word := patterns[len(patterns)-1].word
	for i := len(patterns) - 1; i >= 0 && math.Abs(key.FromNose) <= patterns[i].upTo; i-- {
		word = patterns[i].word
	}
	if math.Abs(key.FromNose) < straightOn {
		s.add("Straight before the nose it is %s: ", word)
	} else {
		s.add("At %s from the nose it is %s: ", angle("fromNose", key.FromNose), word)
	}
	switch apart := math.Abs(lens.Stops(key.Key / key.Fill)); {
	case key.Fill <= 0 || key.Key <= 0:
		s.add("by itself it leaves one side of the face dark.")
	case unit.EqualStops(apart):
		s.add("by itself it lights both sides alike.")
	default:
		s.add("by itself, with what comes back of it, it puts the two sides %s apart.", stops("alone", apart))
	}
	t.tellBroad(s)
}

// tellBroad says whether the side that is lit is the one that the camera sees more of.
func (t *teacher) tellBroad(s *saying) {
	if t.view == nil || t.lesson.Stops == nil || unit.EqualStops(*t.lesson.Stops) {
		return
	}
	off := angle("cameraFromNose", t.fromNose(toward(t.person.Face.At, t.camera.Frame.At)))
	switch t.view.From {
	case meter.FromLit:
		s.add(" %s looks %s off the nose from the lit side, so the broad side is lit, the one that it sees more of.", t.cameraWords(), off)
	case meter.FromShadow:
		s.add(" %s looks %s off the nose from the shadow side, so the short side is lit, the one that it sees less of.", t.cameraWords(), off)
	}
}

// tellFill says what the two sides differ by, and what is left of the shadow side without the fill; where there is none, what
// lights that side.
func (t *teacher) tellFill(s *saying) {
	s.About = "ratio"
	fill := t.reading("fill")
	if !(*fill.Lux > 0) {
		s.add("No light reaches the fill side.")
		return
	}
	t.tellRatio(s, *fill.Lux)
	var names, numbered []string
	for i := range t.lesson.Lights {
		if l := &t.lesson.Lights[i]; l.Role == term.Fill && l.Fill > 0 {
			names, numbered = append(names, l.Light), append(numbered, l.Numbered)
		}
	}
	if len(names) == 0 {
		t.tellUnfilled(s, fill)
		return
	}
	t.tellWithout(s, fill, names, strings.Join(numbered, " and "))
}

// tellRatio says what the two sides of the face differ by.
func (t *teacher) tellRatio(s *saying, fill float64) {
	s.add("The fill side has %s, %s: ", t.illuminance("fillSide", fill), t.stop("fillStop", fill))
	if c := t.face.Contrast; unit.EqualStops(c.Stops) {
		s.add("both sides are equal.")
	} else {
		s.add("key + fill : fill is %s, %s", ratio("ratio", c.Ratio), stops("contrast", c.Stops))
		if k, ok := t.face.KeyToFill(); ok {
			s.add(", and key : fill %s", ratio("keyToFill", k))
		}
		s.add(".")
	}
}

// tellWithout says what the fill side falls to without the lights that fill.
func (t *teacher) tellWithout(s *saying, fill *meter.Reading, names []string, numbered string) {
	left, key := without(fill, names), without(t.reading("key"), names)
	if left < *fill.Lux*1e-6 {
		s.add(" Without %s nothing would light it.", numbered)
		return
	}
	under := lens.Stops(key / left)
	s.add(" Without %s that side falls to %s, %s", numbered, t.illuminance("withoutFill", left), t.stop("withoutFillStop", left))
	switch {
	case unit.EqualStops(under):
		s.add(", equal to the other.")
	case under > 0:
		s.add(", %s under the other.", stops("withoutFillContrast", under))
	default:
		s.add(", %s over the other.", stops("withoutFillContrast", under))
	}
}

// tellUnfilled says what lights the fill side where no light fills.
func (t *teacher) tellUnfilled(s *saying, fill *meter.Reading) {
	most, bounced := &t.lesson.Lights[0], 0.0
	for i := range t.lesson.Lights {
		if l := &t.lesson.Lights[i]; l.Fill > most.Fill {
			most = l
		}
	}
	for i := range fill.Shares {
		if fill.Shares[i].Path == light.Reflected.String() {
			bounced += fill.Shares[i].Lux
		}
	}
	s.add(" No light fills: %s of that is light of %s, and %s of all of it has come back off walls and things.", percent("mostOfFill", most.Fill / *fill.Lux), most.Numbered,
		percent("bounced", bounced / *fill.Lux))
}

// tellDistance says what comes of moving the key back.
func (t *teacher) tellDistance(s *saying) {
	s.About = "distance"
	m, key := t.moved, t.key()
	switch {
	case m == nil:
	case m.wall != "":
		s.add("%s cannot go %s back: %s is %s behind it.", key.Numbered, t.length("back", m.by), m.wall, t.length("room", m.room))
	default:
		word := "less"
		if m.lost < 0 {
			word = "more"
		}
		moved := "Moved %s back at its height"
		if m.up {
			moved = "Lifted by %s"
		}
		s.add(moved+", %s from the face and with the same aim, %s gives the key side %s %s; for a point the inverse square says %s.", t.length("back", m.by),
			t.length("farther", m.farther), key.Numbered, stops("lost", m.lost), word, stops("inverseSquare", m.asPoint))
	}
}

// tipOfNose is how far the tip of a nose stands out from the face, mm, and so about how far a shadow's edge falls behind it
// (from memory of tables of adult faces: 15 to 25).
const tipOfNose = 20

// tellSize says how large the key looks from the face, how wide the edge of a shadow is, and where the lamp shows in the eyes.
func (t *teacher) tellSize(s *saying) {
	s.About = "size"
	key := t.key()
	switch {
	case key.At == nil:
		return
	case key.Wide*key.Distance < 1e-9:
		s.add("From the face the key counts as a point, so that the shadow of the nose has a hard edge.")
	default:
		s.add("From the face %s is %s wide and %s high, so that %s behind the edge that throws it a shadow fades over %s.", cmp.Or(key.By, "it"), angle("wide", key.Wide), angle("high", key.High),
			millimetres("behind", tipOfNose), millimetres("penumbra", penumbra(key.Wide, key.Distance)))
	}
	t.tellEyes(s, key)
}

// penumbra is how wide a shadow's edge is, mm, on a plane square to the light tipOfNose behind what throws it: by similar
// triangles the width of the source by that depth over the way from the source to the edge.
func penumbra(wide, metres float64) float64 {
	source := 2 * metres * math.Tan(wide/2*math.Pi/180)
	depth := tipOfNose / 1000.0
	if metres <= depth {
		return source * 1000
	}
	return source * depth / (metres - depth) * 1000
}

// tellEyes says where the camera sees the key in the eyes.
func (t *teacher) tellEyes(s *saying, key *meter.LessonLight) {
	if t.view == nil || t.view.Outside || key.By != "" {
		return
	}
	for _, c := range t.view.Catchlights {
		if c.Light != key.Light {
			continue
		}
		if c.Hour == 0 {
			s.add(" %s sees it in the middle of the eyes", t.cameraWords())
		} else {
			s.add(" %s sees it in the eyes at %s", t.cameraWords(), whole("hour", float64(c.Hour), "o'clock", " o'clock"))
		}
		if math.Round(100*c.Size) >= 1 {
			s.add(", %s of the iris wide", percent("iris", c.Size))
		}
		s.add(".")
		return
	}
	s.add(" %s does not see it in the eyes.", t.cameraWords())
}
