package font

import (
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

func family(t testing.TB) *Family {
	t.Helper()
	f, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// The advances of Helvetica in thousandths of an em (Adobe, Core 14 AFM files, Helvetica.afm and
// Helvetica-Bold.afm, lines "C n ; WX w"), which Liberation Sans was drawn to match.
func TestWidthsAreThoseOfTheStandardSans(t *testing.T) {
	f := family(t)
	for _, c := range []struct {
		s             string
		regular, bold float64
	}{
		{" ", 278, 278}, {"0", 556, 556}, {"9", 556, 556}, {"A", 667, 722}, {"W", 944, 944},
		{"i", 222, 278}, {"m", 833, 889}, {".", 278, 278}, {"%", 889, 889}, {"é", 556, 556},
	} {
		if got := f.Width(c.s, 1000, false); got != c.regular {
			t.Errorf("%q regular: %v, want %v", c.s, got, c.regular)
		}
		if got := f.Width(c.s, 1000, true); got != c.bold {
			t.Errorf("%q bold: %v, want %v", c.s, got, c.bold)
		}
	}
}

func TestFiguresAreTabular(t *testing.T) {
	f := family(t)
	for _, r := range "123456789" {
		for _, bold := range []bool{false, true} {
			if f.Width(string(r), 1, bold) != f.Width("0", 1, bold) {
				t.Errorf("figure %c is not as wide as 0 (bold %v)", r, bold)
			}
		}
	}
}

func TestWidthsAddUp(t *testing.T) {
	f := family(t)
	const s = "AV. To 4300 K — ½ CTO, 2.8 m²"
	sum := 0.0
	for _, r := range s {
		sum += f.Width(string(r), 2.5, false)
	}
	if got := f.Width(s, 2.5, false); !(math.Abs(got-sum) <= 1e-12) {
		t.Errorf("width %v, sum of runes %v", got, sum)
	}
	if f.Width("a\x00\u200b\u202eb", 1, false) != f.Width("ab", 1, false) {
		t.Error("controls have a width")
	}
	if f.Width("a\tb", 1, false) != f.Width("a b", 1, false) {
		t.Error("a tab is not a space")
	}
}

func TestMetrics(t *testing.T) {
	f := family(t)
	// hhea and OS/2 of Liberation Sans 2.1: ascender 1854, descender -434, cap height 1409 of 2048.
	for _, c := range []struct{ got, want float64 }{
		{f.Ascent(2048), 1854}, {f.Descent(2048), 434}, {f.CapHeight(2048), 1409},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9) {
			t.Errorf("got %v, want %v", c.got, c.want)
		}
	}
	if f.Name() != "Liberation Sans" || !f.HasBold() {
		t.Errorf("name %q, bold %v", f.Name(), f.HasBold())
	}
}

func TestMissing(t *testing.T) {
	f := family(t)
	if got := f.Missing("T2.8 · 4300 K, ½ CTB, 5 m², 30°, − × ≥ ± ‘’“” … é ß Ω → ⅓ ⅔"); len(got) > 0 {
		t.Errorf("the sheet's own signs are missing: %q", got)
	}
	if got, want := f.Missing("b漢a字漢😀\x07"), []rune("字漢😀"); !slices.Equal(got, want) {
		t.Errorf("missing %q, want %q", string(got), string(want))
	}
	if f.Width("字", 1, false) != f.Width("漢", 1, false) || f.Width("😀", 1, false) != f.Width("\uFFFD", 1, false) {
		t.Error("what is missing is not as wide as what stands for it")
	}
}

func TestOutlineStandsWhereTheTextDoes(t *testing.T) {
	f := family(t)
	for _, c := range []struct {
		text     ink.Text
		min, max r2.Vec
	}{
		// H of Liberation Sans: x 168 to 1312, y 0 to 1409, advance 1479 of 2048.
		{ink.Text{S: "H", Size: 2048}, r2.Vec{X: 168}, r2.Vec{X: 1312, Y: 1409}},
		{ink.Text{S: "H", Size: 2048, Angle: 90}, r2.Vec{X: -1409, Y: 168}, r2.Vec{X: 0, Y: 1312}},
		{ink.Text{S: "H", Size: 2048, Align: ink.Right, At: r2.Vec{X: 0.722 * 2048, Y: 10}}, r2.Vec{X: 168, Y: 10}, r2.Vec{X: 1312, Y: 1419}},
		{ink.Text{S: "H", Size: 2048, Align: ink.Centre, At: r2.Vec{X: 0.361 * 2048}}, r2.Vec{X: 168}, r2.Vec{X: 1312, Y: 1409}},
		{ink.Text{S: " H", Size: 2048}, r2.Vec{X: 168 + 0.278*2048}, r2.Vec{X: 1312 + 0.278*2048, Y: 1409}},
	} {
		b := f.Outline(&c.text).Bounds().Box
		if r2.Norm(r2.Sub(b.Min, c.min)) > 1e-6 || r2.Norm(r2.Sub(b.Max, c.max)) > 1e-6 {
			t.Errorf("%+v: box %v, want %v to %v", c.text, b, c.min, c.max)
		}
	}
}

func TestOutlinesOfEveryKnownRuneStayNearTheirBox(t *testing.T) {
	f := family(t)
	for r := rune(' '); r < lastCachedRune; r++ {
		if !f.regular.has(r) || !f.bold.has(r) {
			continue
		}
		for _, bold := range []bool{false, true} {
			b := f.Outline(&ink.Text{S: string(r), Size: 1, Bold: bold}).Bounds()
			if e := b.Grown(0); !e.Empty() && (e.Box.Min.X < -1 || e.Box.Max.X > 2 || e.Box.Min.Y < -0.5 || e.Box.Max.Y > 1.3) {
				t.Errorf("%q: %v", r, e.Box)
			}
		}
	}
}

func TestWithoutBold(t *testing.T) {
	f, err := Load(liberationsansregular.TTF, nil)
	if err != nil {
		t.Fatal(err)
	}
	if f.HasBold() || f.Width("A", 1, true) != f.Width("A", 1, false) {
		t.Error("bold is not the regular weight")
	}
}

func TestUnusableFontsSayWhy(t *testing.T) {
	good := liberationsansregular.TTF
	edited := func(edit func(tables)) []byte {
		tb, err := readTables(good)
		if err != nil {
			t.Fatal(err)
		}
		for tag, data := range tb {
			tb[tag] = slices.Clone(data)
		}
		edit(tb)
		return tb.embeddable()
	}
	for name, c := range map[string]struct {
		file []byte
		want string
	}{
		"empty":      {nil, "too short"},
		"text":       {[]byte("this is not a font at all"), "not a TrueType font"},
		"postscript": {append([]byte("OTTO"), good[4:]...), "PostScript outlines"},
		"collection": {append([]byte("ttcf"), good[4:]...), "collection"},
		"cut":        {good[:len(good)/2], "cut short"},
		"directory":  {good[:20], "cut short"},
		"no map":     {edited(func(tb tables) { tb["cmap"] = []byte{0, 0, 0, 0} }), "Unicode"},
		"no glyphs":  {edited(func(tb tables) { delete(tb, "glyf") }), `"glyf" is missing`},
		"forbidden":  {edited(func(tb tables) { tb["OS/2"][9] = 2 }), "embedding"},
	} {
		if _, err := Load(c.file, nil); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", name, err, c.want)
		}
		if _, err := Load(good, append([]byte{}, c.file...)); err == nil || !strings.Contains(err.Error(), "bold font") {
			t.Errorf("%s as bold: error %v", name, err)
		}
	}
}

func TestEmbeddableIsAFontOfItsOwn(t *testing.T) {
	f := family(t)
	slim, err := Load(f.Embeddable(false), f.Embeddable(true))
	if err != nil {
		t.Fatal(err)
	}
	text := &ink.Text{S: "Rg é ½", Size: 3, Bold: true}
	if !slices.Equal(slim.Outline(text), f.Outline(text)) {
		t.Error("outlines differ")
	}
	if slim.Width(text.S, 3, true) != f.Width(text.S, 3, true) {
		t.Error("widths differ")
	}
	if got, all := len(f.Embeddable(true)), len(liberationsansbold.TTF); got >= all {
		t.Errorf("%d bytes of %d", got, all)
	}
}

func TestConcurrentUse(t *testing.T) {
	f := family(t)
	text := &ink.Text{S: "shared 漢", Size: 3}
	want := f.Outline(text)
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 50 {
				if !slices.Equal(f.Outline(text), want) || f.Width(text.S, 3, false) <= 0 || len(f.Missing(text.S)) != 1 {
					t.Error("results differ between goroutines")
					return
				}
			}
		})
	}
	group.Wait()
}

func FuzzLoad(f *testing.F) {
	f.Add([]byte("OTTO"))
	f.Add(liberationsansregular.TTF[:4096])
	f.Fuzz(func(t *testing.T, file []byte) {
		family, err := Load(file, nil)
		if err != nil {
			return
		}
		family.Outline(&ink.Text{S: "AÄ→", Size: 1})
		family.Embeddable(false)
	})
}

func BenchmarkDefault(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Default(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWidth(b *testing.B) {
	f := family(b)
	b.ReportAllocs()
	for b.Loop() {
		f.Width("300 W 1.0 m soft, 4300 K 35 % h 2.0", 2.5, false)
	}
}

func BenchmarkOutline(b *testing.B) {
	f := family(b)
	text := &ink.Text{S: "300 W 1.0 m soft, 4300 K 35 % h 2.0", Size: 2.5}
	b.ReportAllocs()
	for b.Loop() {
		f.Outline(text)
	}
}
