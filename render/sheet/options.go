package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
)

// Options say how a sheet is drawn. An empty word leaves the choice to the scene, and where that
// says nothing to the plan itself. The zero value is ready to use.
type Options struct {
	Paper  string       // "A3", "letter portrait", "landscape"
	Scale  string       // "1:50", `1/4"`
	Theme  string       // "day"
	Tint   string       // bands, smooth or colour: the ground of the map
	Beams  string       // all, main or none: whose beams and throws are drawn whole; "": all, where they are few
	Levels string       // lx, fc, stop, stops: what contours are lettered in
	Field  string       // floor or face: what is mapped
	Notes  string       // teach: a page and sentences to learn from, of studies that package teach has added a lesson to; "": none
	Packet bool         // the set-ups are a day: a cover comes before their pages, and what matches and the lists behind them
	For    string       // who reads it: electric, grip, camera, rental or class; "": everybody
	Since  *Since       // the sheets that the crew already holds; nil: nobody asks what was revised
	Date   string       // ISO 8601; the sheet's date where the scene gives none
	Font   *font.Family // nil: the embedded one
}

// request is what options and scene ask for, read and checked.
type request struct {
	paper  *layout.Paper
	way    layout.Orientation
	scale  float64 // 0: choose
	theme  draw.Theme
	levels carto.Unit
	how    draw.How
	teach  bool // a page to learn from
	reader reader
}

// placedWord is a word with the place it was written at, if it stands in the scene.
type placedWord struct {
	word string
	span source.Span
	path string
}

// pick prefers the option to the scene's word.
func pick[W ~string](option string, g scene.Given[W], path string) placedWord {
	if option != "" || !g.Set {
		return placedWord{word: strings.TrimSpace(option)}
	}
	return placedWord{word: strings.TrimSpace(string(g.Value)), span: g.Span, path: path}
}

// Check returns the faults of options, and of what the set-ups of a scene ask of their sheets, that Compose
// would find: before light is computed for a sheet that cannot be drawn.
func Check(setups []*plan.Setup, o Options) []source.Diagnostic {
	log := &faults{}
	for _, s := range setups {
		asked(o, s, log)
	}
	return log.all
}

// asked reads options and the scene's sheet. Every fault is an error in the log with the nearest
// word that would do.
func asked(o Options, s *plan.Setup, log *faults) request {
	var sheet scene.Sheet
	if s.Scene != nil {
		sheet = s.Scene.Sheet
	}
	w := request{}
	feet := s.Feet
	w.readPaper(pick(o.Paper, sheet.Paper, "sheet.paper"), log)
	w.readScale(pick(o.Scale, sheet.Scale, "sheet.scale"), feet, log)
	w.readLevels(pick(o.Levels, sheet.Levels, "sheet.levels"), feet, log)
	theme, ok := draw.ThemeNamed(o.Theme)
	if !ok {
		unknown(log, placedWord{word: o.Theme}, "theme", draw.ThemeNames())
	}
	w.theme = theme
	w.readTint(o.Tint, log)
	w.readBeams(o.Beams, log)
	w.readNotes(o.Notes, log)
	w.readReader(o.For, log)
	checkField(pick(o.Field, sheet.Field, "sheet.field"), s, log)
	return w
}

func (w *request) readPaper(s placedWord, log *faults) {
	paper, way, ok := layout.ParsePaper(s.word)
	if !ok {
		unknown(log, s, "paper", layout.PaperNames())
	}
	w.paper, w.way = paper, way
}

func (w *request) readScale(s placedWord, feet bool, log *faults) {
	if s.word == "" {
		return
	}
	times, err := unit.ParsePlanScale(s.word, feet)
	if err != nil {
		d := source.Diagnostic{Severity: source.Error, Message: err.Error()}
		if f := (*source.Diagnostic)(nil); errors.As(err, &f) {
			d = *f
		}
		d.Code, d.Span, d.Path = "unknown-scale", s.span, s.path
		log.add(d)
		return
	}
	w.scale = times
}

func (w *request) readLevels(s placedWord, feet bool, log *faults) {
	if s.word == "" {
		if feet {
			w.levels = carto.Footcandles
		}
		return
	}
	var ok bool
	if w.levels, ok = section.LevelUnit(s.word); !ok {
		unknown(log, s, "measure of light", section.LevelNames())
	}
}

// unknown records a word that is not one of those there are.
func unknown(log *faults, s placedWord, what string, all []string) {
	hint := "write one of " + strings.Join(all, ", ")
	if near := source.Nearest(s.word, all); near != "" {
		hint = "did you mean " + near + "? Write one of " + strings.Join(all, ", ")
	}
	log.add(source.Diagnostic{Severity: source.Error, Code: "unknown-" + strings.ReplaceAll(what, " ", "-"),
		Span: s.span, Path: s.path,
		Message: fmt.Sprintf("there is no %s %q", what, s.word),
		Hint:    hint})
}

// The grounds that a map can have, the default first.
const (
	tintBands  = "bands"
	tintSmooth = "smooth"
	tintColour = "colour"
)

// TintNames lists the grounds that a map can have, the default first.
func TintNames() []string { return []string{tintBands, tintSmooth, tintColour} }

func (w *request) readTint(word string, log *faults) {
	names := TintNames()
	if word != "" && !slices.Contains(names, word) {
		unknown(log, placedWord{word: word}, "tint", names)
	}
	w.how.Smooth = word == tintSmooth
}

// BeamNames lists the words for whose beams are drawn whole.
func BeamNames() []string { return section.BeamNames() }

func (w *request) readBeams(word string, log *faults) {
	var ok bool
	if w.how.Beams, ok = section.BeamsNamed(word); !ok {
		unknown(log, placedWord{word: word}, "choice of beams", section.BeamNames())
	}
}

// notesTeach asks for notes to learn from.
const notesTeach = "teach"

// NotesNames lists the notes that a sheet can have.
func NotesNames() []string { return []string{notesTeach} }

func (w *request) readNotes(word string, log *faults) {
	w.teach = word == notesTeach
	if word != "" && !w.teach {
		unknown(log, placedWord{word: word}, "kind of notes", NotesNames())
	}
}

// Teaches says whether the options ask for notes to learn from, for which a study needs a lesson.
func (o Options) Teaches() bool { return o.Notes == notesTeach || o.For == forClass }

func (w *request) readReader(word string, log *faults) {
	all := readers()
	i := slices.IndexFunc(all, func(r reader) bool { return r.name == word })
	if i < 0 {
		unknown(log, placedWord{word: word}, "reader", ReaderNames())
		i = 0
	}
	w.reader = all[i]
	w.teach = w.teach || w.reader.teach
	if word == forElectric && w.how.Beams == section.ManyBeams {
		w.how.Beams = section.AllBeams
	}
}

// PicksPlans says whether the pages that the options ask for show the plans of set-ups, for which light is needed.
func (o Options) PicksPlans() bool { return o.For != forRental }

// Matches says whether the pages that the options ask for put faces of several set-ups side by side.
func (o Options) Matches() bool {
	return o.Packet && slices.ContainsFunc(readers(), func(r reader) bool { return r.name == o.For && r.matching })
}
