package pdf

import (
	"fmt"
	"io"
	"math"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// gauge looks at what is held when the first of a file is written, bytes: then all pages are drawn, and none is let go.
type gauge struct{ held uint64 }

func (g *gauge) Write(p []byte) (int, error) {
	if g.held == 0 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		g.held = m.HeapAlloc
	}
	return io.Discard.Write(p)
}

// busy is a document of pages with many lines each, folded as a packet has them.
func busy(pages int) ink.Document {
	doc := ink.Document{Title: "busy"}
	for n := range pages {
		p := ink.Page{Name: fmt.Sprint(n), Width: 297, Height: 210}
		c := ink.NewCanvas(&p, ink.Contours)
		for i := range 1000 {
			x := 148 + 100*math.Sin(float64(i*(n+3)))
			c.Draw(ink.Pen{Width: 0.2}, ink.Path{}.MoveTo(r2.Vec{X: x, Y: 20}).LineTo(r2.Vec{X: x + 3, Y: 190*math.Abs(math.Cos(float64(i))) + 10}))
		}
		c.Text(ink.Text{S: fmt.Sprint("page ", n), Size: 5, At: r2.Vec{X: 10, Y: 10}})
		p.Fold()
		doc.Pages = append(doc.Pages, p)
	}
	return doc
}

// Of each page a file holds no more than it writes of it: of pages as they are drawn, one at a time.
func TestPagesAreNotHeldOpen(t *testing.T) {
	opts := Options{Font: family(t)}
	held := func(pages int) (own uint64, written int) {
		doc, g, size := busy(pages), gauge{}, counter(0)
		runtime.GC()
		var before runtime.MemStats
		runtime.ReadMemStats(&before)
		if err := Write(io.MultiWriter(&g, &size), doc, opts); err != nil {
			t.Fatal(err)
		}
		runtime.KeepAlive(doc)
		return g.held - min(g.held, before.HeapAlloc), int(size)
	}
	few, fewWritten := held(3)
	many, manyWritten := held(18)
	if each, most := (float64(many)-float64(few))/15, 1.2*float64(manyWritten-fewWritten)/15; each > most {
		t.Errorf("each page more is held with %.0f bytes, at most %.0f: %d of 3, %d of 18", each, most, few, many)
	}
}

// counter counts what is written to it, bytes.
type counter int

func (c *counter) Write(p []byte) (int, error) { *c += counter(len(p)); return len(p), nil }
