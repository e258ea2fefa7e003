package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

// sample is a document of two pages whose labels try to break out.
func sample() ink.Document {
	page := func(title string) ink.Page {
		p := ink.Page{Title: title, Width: 100, Height: 50}
		c := ink.NewCanvas(&p, ink.Walls)
		c.Rect(ink.Pen{Width: 0.5}, r2.Vec{X: 10, Y: 10}, r2.Vec{X: 90, Y: 40})
		c.On(ink.Notes).Text(ink.Text{At: r2.Vec{X: 12, Y: 12}, S: `</svg><script>alert("x")</script>`, Size: 3})
		return p
	}
	return ink.Document{Title: `A & B <script>`, Language: "en", Pages: []ink.Page{page(`one"><img src=x>`), page("two")}}
}

func written(t testing.TB, d ink.Document) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d, Options{}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// element is an element of a page, with its attributes and its own text.
type element struct {
	name, text string
	attrs      map[string]string
}

// elements reads a page, and fails where an element is not closed.
func elements(t testing.TB, file string) []*element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(file))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var all, open []*element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, file)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			all, open = append(all, e), append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				open[len(open)-1].text += string(token)
			}
		}
	}
}

// named returns the elements of a name.
func named(all []*element, name string) []*element {
	return slices.DeleteFunc(slices.Clone(all), func(e *element) bool { return e.name != name })
}

func TestLabelsStayLabels(t *testing.T) {
	all := elements(t, written(t, sample()))
	for _, name := range []string{"script", "img", "iframe", "object", "link"} {
		if n := len(named(all, name)); n > 0 {
			t.Errorf("%d elements %q", n, name)
		}
	}
	if titles := named(all, "title"); titles[0].text != `A & B <script>` {
		t.Errorf("title %q", titles[0].text)
	}
	if text := named(all, "text")[0].text; text != `</svg><script>alert("x")</script>` {
		t.Errorf("label %q", text)
	}
	if tab := named(all, "a")[0].text; tab != `one"><img src=x>` {
		t.Errorf("tab %q", tab)
	}
}

func TestNothingComesFromOutside(t *testing.T) {
	for _, doc := range []ink.Document{sample(), specimen.Document()} {
		file := written(t, doc)
		for _, e := range elements(t, file) {
			for name, value := range e.attrs {
				local := strings.HasPrefix(value, "#") || strings.HasPrefix(value, "data:image/png;")
				if (name == "href" || name == "src") && !local || strings.HasPrefix(name, "on") || name == "style" {
					t.Errorf("%s has %s=%q", e.name, name, value)
				}
			}
		}
		if strings.Contains(file, "@import") || strings.Contains(style, "url(") {
			t.Error("the style sheet asks for something")
		}
	}
}

func TestThePolicyAllowsTheStyleAndNothingElse(t *testing.T) {
	all := elements(t, written(t, sample()))
	policy := ""
	for _, m := range named(all, "meta") {
		if m.attrs["http-equiv"] == "Content-Security-Policy" {
			policy = m.attrs["content"]
		}
	}
	sum := sha256.Sum256([]byte(named(all, "style")[0].text))
	for _, want := range []string{"default-src 'none'", "style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"} {
		if !strings.Contains(policy, want) {
			t.Errorf("no %s in %q", want, policy)
		}
	}
	if strings.Contains(policy, "script-src") || strings.Contains(policy, "unsafe") {
		t.Errorf("policy %q", policy)
	}
}

func TestEverySheetHasATabAndItsPaper(t *testing.T) {
	file := written(t, specimen.Document())
	all := elements(t, file)
	ids := map[string]int{}
	for _, e := range all {
		if id := e.attrs["id"]; id != "" {
			ids[id]++
		}
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("%d elements have the id %q", n, id)
		}
	}
	var tabs []string
	for _, a := range named(all, "a") {
		tabs = append(tabs, a.text)
		if ids[strings.TrimPrefix(a.attrs["href"], "#")] != 1 {
			t.Errorf("tab %q leads nowhere", a.text)
		}
	}
	if want := []string{"Specimen: one of everything", "Second page", "All"}; !slices.Equal(tabs, want) {
		t.Errorf("tabs %q, want %q", tabs, want)
	}
	if drawings := slices.DeleteFunc(named(all, "svg"), func(e *element) bool { return e.attrs["class"] == "plan" }); len(drawings) != 2 {
		t.Errorf("%d drawings", len(drawings))
	}
	for _, want := range []string{"@page sheet-1 { size: 180mm 120mm;", "@page sheet-2 { size: 297mm 210mm;"} {
		if !strings.Contains(file, want) {
			t.Errorf("no %q", want)
		}
	}
	one := sample()
	one.Pages = one.Pages[:1]
	if len(named(elements(t, written(t, one)), "nav")) != 0 {
		t.Error("one sheet needs no tabs")
	}
}

// TestTheRoomComesFirstOnASmallScreen: beside each sheet with a plan stands a second look at its layers,
// cut to what is drawn to scale; the style sheet shows it where the screen is small.
func TestTheRoomComesFirstOnASmallScreen(t *testing.T) {
	doc := sample()
	c := ink.NewCanvas(&doc.Pages[0], ink.Collar)
	c.Rect(ink.Pen{Width: 0.5}, r2.Vec{X: 1, Y: 1}, r2.Vec{X: 99, Y: 49})
	doc.Pages[1].Items = doc.Pages[0].Items[len(doc.Pages[0].Items)-1:]
	all := elements(t, written(t, doc))
	ids, uses, plans := map[string]bool{}, []string{}, []*element{}
	for _, e := range all {
		ids[e.attrs["id"]] = true
		if e.attrs["class"] == "plan" {
			plans = append(plans, e)
		}
		if e.name == "use" {
			uses = append(uses, e.attrs["href"])
		}
	}
	if len(plans) != 1 || plans[0].attrs["viewBox"] != "6.75 6.75 86.5 36.5" || plans[0].attrs["aria-hidden"] != "true" {
		t.Fatalf("%d plans", len(plans))
	}
	if want := []string{"#sheet-1-layer-walls-and-openings", "#sheet-1-layer-notes"}; !slices.Equal(uses, want) {
		t.Errorf("the plan shows %v, want %v", uses, want)
	}
	for _, u := range uses {
		if !ids[strings.TrimPrefix(u, "#")] {
			t.Errorf("nothing is called %s", u)
		}
	}
	if !strings.Contains(style, "@media screen and (max-width: 45rem)") {
		t.Error("no screen is small")
	}
}

func TestEveryLayerHasASwitch(t *testing.T) {
	file := written(t, specimen.Document())
	all := elements(t, file)
	drawn := map[string]bool{}
	for _, g := range named(all, "g") {
		if l := g.attrs["data-layer"]; l != "" {
			drawn[l] = true
		}
	}
	switches := 0
	for _, i := range named(all, "input") {
		l, ok := strings.CutPrefix(i.attrs["id"], "layer-")
		if !ok {
			continue
		}
		switches++
		if _, checked := i.attrs["checked"]; !checked || !drawn[l] {
			t.Errorf("switch %q: checked %v, drawn %v", l, checked, drawn[l])
		}
		if rule := `body:has(#layer-` + l + `:not(:checked)) [data-layer="` + l + `"] { display: none; }`; !strings.Contains(file, rule) {
			t.Errorf("no %s", rule)
		}
	}
	if switches != len(drawn) || switches < 6 {
		t.Errorf("%d switches for %d layers", switches, len(drawn))
	}
}

func TestWhatIsNotSaidHasAName(t *testing.T) {
	all := elements(t, written(t, ink.Document{Pages: []ink.Page{{Width: 10, Height: 10}, {Width: 10, Height: 10}}}))
	if title := named(all, "title")[0].text; title != "Sheet 1" {
		t.Errorf("title %q", title)
	}
	if html := named(all, "html")[0]; html.attrs["lang"] != "en" {
		t.Errorf("language %q", html.attrs["lang"])
	}
}

func TestSameBytes(t *testing.T) {
	first := written(t, specimen.Document())
	if second := written(t, specimen.Document()); first != second {
		t.Error("two runs differ")
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	if err := Write(io.Discard, ink.Document{}, Options{}); err == nil {
		t.Error("no error for no pages")
	}
	if err := Write(io.Discard, ink.Document{Pages: []ink.Page{{}}}, Options{}); err == nil || !strings.Contains(err.Error(), "0 by 0 mm") {
		t.Errorf("no size: error %v", err)
	}
	if err := Write(broken{}, sample(), Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a full disk gives %v", err)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func FuzzPageText(f *testing.F) {
	for _, s := range []string{"plain", specimen.Hostile, "</style><script>", "{{.}}", "--><!--", "\xff"} {
		f.Add(s, s)
	}
	family, err := font.Default()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, title, label string) {
		p := ink.Page{Title: title, Width: 10, Height: 10}
		ink.NewCanvas(&p, ink.Notes).Of(label, label).Text(ink.Text{S: label, Size: 3})
		var b bytes.Buffer
		doc := ink.Document{Title: title, Language: label, Pages: []ink.Page{p, p}}
		if err := Write(&b, doc, Options{Font: family}); err != nil {
			t.Fatal(err)
		}
		all := elements(t, b.String())
		if n := len(named(all, "script")) + len(named(all, "img")); n > 0 {
			t.Errorf("%d elements were made by labels", n)
		}
		for _, e := range named(all, "text") {
			if want := ink.Clean(label); e.text != want && e.text != "\u2067"+want+"\u2069" { // what runs from right to left is isolated
				t.Errorf("label %q became %q", label, e.text)
			}
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	family, err := font.Default()
	if err != nil {
		b.Fatal(err)
	}
	doc := specimen.Document()
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, doc, Options{Font: family}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestTabs names pages by what their titles say more than the document's.
func TestTabs(t *testing.T) {
	for title, want := range map[string]string{
		"The den":                      "Plan",
		"The den, set-up close":        "Set-up close",
		"The den, set-up close, lists": "Set-up close, lists",
		"The denizens":                 "The denizens",
		"":                             "",
		"The den, élan":                "Élan",
	} {
		if got := tab(title, "The den"); got != want {
			t.Errorf("%q has the tab %q, want %q", title, got, want)
		}
	}
}

// TestASmallScreenShowsColumns: a drawing with its headings, and lists as cards of what is said, escaped; the style sheet
// shows them where the screen is narrow, and none of the sheets beside them.
func TestASmallScreenShowsColumns(t *testing.T) {
	doc := sample()
	column := Column{Heading: "Set-up <1>", Lines: []string{"T2.8"}, Drawing: doc.Pages[1], Cards: []Card{
		{Title: "Lights", Words: []string{"in metres"}, Rows: []Row{{Name: "1 soft & low", Figures: []Figure{{Of: "throw", Value: "2.10"}, {Value: "35 %", Struck: true}}, Notes: []string{"from the wall"}}}},
		{Title: "Watch", Alarm: true, Points: []string{"mind the step"}},
	}}
	var b bytes.Buffer
	if err := Write(&b, doc, Options{Phone: []Column{column, column}}); err != nil {
		t.Fatal(err)
	}
	all := elements(t, b.String())
	of := func(name string) (texts []string) {
		for _, e := range named(all, name) {
			texts = append(texts, strings.TrimSpace(e.text))
		}
		return texts
	}
	for name, want := range map[string][]string{
		"h2": {"Set-up <1>", "Set-up <1>"}, "h3": {"Lights", "Watch", "Lights", "Watch"}, "dt": {"1 soft & low", "1 soft & low"},
		"small": {"throw", "throw"}, "s": {"35 %", "35 %"}, "li": {"mind the step", "mind the step"},
	} {
		if got := of(name); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	ids := map[string]int{}
	for _, e := range all {
		if id := e.attrs["id"]; id != "" {
			if ids[id]++; ids[id] > 1 {
				t.Errorf("the id %s stands twice", id)
			}
		}
		if e.attrs["class"] == "plan" {
			t.Error("a plan stands beside the columns")
		}
	}
	if drawings := named(all, "svg"); len(drawings) != 4 {
		t.Errorf("%d drawings, want two sheets and two columns", len(drawings))
	}
}

// A link of a sheet leads to the tab of the other, by its name, and says what that is; one to nowhere, to itself or without size leads nowhere. A sheet with links
// is no image: a screen reader says nothing of what is in one.
func TestLinksLeadToTabs(t *testing.T) {
	at := func(to string) ink.Link {
		return ink.Link{Min: r2.Vec{X: 10, Y: 20}, Max: r2.Vec{X: 40, Y: 25}, To: to}
	}
	doc := ink.Document{Title: "A day", Language: "en", Pages: []ink.Page{
		{Name: "cover", Title: "Cover", Width: 100, Height: 50, Links: []ink.Link{at("wide"), at("gone"), at("cover"), at(""), {To: "wide"}}},
		{Name: "wide", Title: `The "wide"`, Width: 100, Height: 50},
	}}
	all := elements(t, written(t, doc))
	var links []*element
	for _, a := range named(all, "a") {
		if a.attrs["aria-label"] != "" {
			links = append(links, a)
		}
	}
	if len(links) != 1 || links[0].attrs["href"] != "#sheet-2" || links[0].attrs["aria-label"] != `The "wide"` {
		t.Errorf("the links are %+v", links)
	}
	rects := named(all, "rect")
	if !slices.ContainsFunc(rects, func(r *element) bool {
		return r.attrs["x"] == "10" && r.attrs["y"] == "25" && r.attrs["width"] == "30" && r.attrs["height"] == "5" && r.attrs["pointer-events"] == "all"
	}) {
		t.Errorf("no rectangle is where the link is")
	}
	var roles []string
	for _, s := range named(all, "svg") {
		roles = append(roles, s.attrs["role"])
	}
	if !slices.Equal(roles, []string{"group", "img"}) {
		t.Errorf("the sheets are %v", roles)
	}
}
