package kit_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// iesOf is a file of 1000 cd times a power of the cosine, with a luminous opening.
func iesOf(power float64, opening string) *source.File {
	var angles, values []string
	for a := 0; a <= 180; a++ {
		angles = append(angles, fmt.Sprint(float64(a)/2))
		values = append(values, fmt.Sprintf("%.6f", 1000*math.Pow(math.Max(0, math.Cos(float64(a)*math.Pi/360)), power)))
	}
	return &source.File{Name: "den/lamp.ies", Text: []byte("IESNA91\nTILT=NONE\n1 -1 1 181 1 1 2 " + opening + "\n1 1 75\n" +
		strings.Join(angles, "\n") + "\n0\n" + strings.Join(values, "\n") + "\n")}
}

// take reads an output and the file that it names.
func take(t *testing.T, text string, f *source.File) (kit.Output, *source.Log) {
	t.Helper()
	o, ok, log := readOutput(t, text)
	if !ok {
		t.Fatal(log.All())
	}
	_, read := o.FileName()
	o.SetMeasured(read(f), &source.Context{Log: log})
	return o, log
}

// A photometric file is the whole of an output: flux, opening, power, and how it is drawn.
func TestMeasuredOutput(t *testing.T) {
	for _, c := range []struct {
		opening string
		power   float64
		want    photometry.Opening
		class   term.Class
	}{
		{"0 0 0", 1, photometry.Opening{}, term.Bare},
		{"0 0 0", 50, photometry.Opening{}, term.Lensed},
		{"0.6 1.2 0", 1, photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}, term.Panel},
		{"-0.2 -0.2 0", 20, photometry.Opening{Form: photometry.Disc, Width: 0.2}, term.Lensed},
		{"-0.1 1.5 -0.1", 1, photometry.Opening{Form: photometry.Tube, Width: 1.5, Height: 0.1}, term.Linear},
		{"-0.5 -0.5 -0.5", 1, photometry.Opening{Form: photometry.Sphere, Width: 0.5}, term.Lantern},
	} {
		o, log := take(t, "{ies: lamp.ies}", iesOf(c.power, c.opening))
		h, ok := shipped(t).HeadOf(o, kit.Choice{}, log)
		if !ok || len(log.All()) > 0 {
			t.Fatal(log.All())
		}
		want := 2 * math.Pi * 1000 / (c.power + 1)
		within(t, c.opening+" lm", h.Source.Flux, want, 1e-3*want)
		within(t, c.opening+" cd", h.Source.Intensity(r3.Vec{Z: -1}), 1000, 1e-9)
		within(t, c.opening+" W", h.Watts, 75, 0)
		if h.Source.Opening != c.want || h.Class != c.class || h.UnitLabel != "lamp.ies" {
			t.Errorf("%s: opening %+v, class %s, label %q", c.opening, h.Source.Opening, h.Class, h.UnitLabel)
		}
		within(t, "Y", h.RelativeOutput(1).Y(), 1, 1e-12)
	}
}

// A fault of the file stands at its own line, and names the line that asks for it; the light gives nothing.
func TestFaultOfMeasuredFile(t *testing.T) {
	f := iesOf(1, "0 0 0")
	f.Text = append(f.Text[:len(f.Text)-20], "x\n"...)
	o, log := take(t, "{ies: lamp.ies}", f)
	all := log.All()
	if len(all) != 1 || all[0].Span.File.Name != "den/lamp.ies" || len(all[0].Related) != 1 || all[0].Related[0].Span.Line != 1 {
		t.Fatalf("%+v", all)
	}
	h, ok := shipped(t).HeadOf(o, kit.Choice{}, log)
	if !ok || h.Source.Flux != 0 {
		t.Errorf("ok %v, %g lm", ok, h.Source.Flux)
	}
}

const measuredKit = `scrimshaw: 1
units:
  spot:
    doc: a spot, measured bare and with a lens tube
    label: spot
    class: lensed
    technology: led
    power: 90 W
    kelvin: 5600 K
    front: ring
    lumens: 2000
    outputs:
      bare: {ies: lamp.ies}
      tube: {ies: lamp.ies}
      wide: {lumens: 800, beam: 50}
  zoom:
    doc: a spot with a zoom, measured at three places of it
    label: zoom
    class: lensed
    technology: led
    power: 90 W
    kelvin: 5600 K
    outputs:
      bare: {spot: {ies: lamp.ies}, 40 %: {ies: lamp.ies}, flood: {lumens: 800, beam: 70}}
modifiers:
  tube: {doc: a lens tube, label: tube, fits: [ring], efficiency: 60 %, beam: 15}
  wide: {doc: a wide lens, label: wide, fits: [ring], efficiency: 60 %, beam: 50}
  cells: {doc: a grid, label: cells, fits: [ring], efficiency: 90 %, grid: [30, 30]}
`

// measuredUnits is the catalogue with the units of measuredKit, each file a power of the cosine.
func measuredUnits(t *testing.T, log *source.Log) *kit.Catalogue {
	t.Helper()
	c := shipped(t).With([]*source.File{{Name: "k.yaml", Text: []byte(measuredKit)}}, log)
	powers := map[string][]float64{"spot": {10, 50}, "zoom": {50, 20}}
	for name, list := range powers {
		u := c.Unit(name)
		for i, power := range list {
			u.Outputs[i].Output.SetMeasured(kit.ReadIES(iesOf(power, "-0.1 -0.1 0")), &source.Context{Log: log})
		}
	}
	if log.Failed() {
		t.Fatal(log.All())
	}
	return c
}

// One file for each modifier: a unit of a kit file takes its outputs from files.
func TestMeasuredUnit(t *testing.T) {
	log := &source.Log{}
	c := measuredUnits(t, log)
	for modifier, beam := range map[string]float64{kit.Unmodified: 42.17, "tube": 19.04, "wide": 50} {
		h, ok := c.Head(kit.Choice{Unit: "spot", Modifier: modifier}, log)
		if !ok || len(log.All()) > 0 || h.Zooms {
			t.Fatal(log.All())
		}
		got, _ := photometry.BeamAngle(h.Source.Distribution)
		within(t, modifier+" beam", got, beam, 1e-3*beam)
		within(t, modifier+" W", h.Watts, 90, 0)
	}
	h, ok := c.Head(kit.Choice{Unit: "spot", Modifier: "cells"}, log)
	if !ok || !(h.Source.Flux > 0) {
		t.Errorf("a grid before measured light: %v, %g lm", log.All(), h.Source.Flux)
	}
}

// One file for each place of a zoom: the nearest is taken, and said where it is not the focus asked for.
func TestMeasuredZoom(t *testing.T) {
	span := source.Span{File: &source.File{Name: "x.yaml", Text: []byte("focus: 30 %")}, Start: 7, End: 11, Line: 1, Col: 8}
	for focus, want := range map[float64]struct {
		beam float64
		says string
	}{
		0: {19.04, ""}, 0.4: {30, ""}, 1: {70, ""},
		0.1: {19.04, `"zoom" has figures for spot, 40 %, flood; at a focus of 10 % the figures of spot are used`},
		0.5: {30, `"zoom" has figures for spot, 40 %, flood; at a focus of 50 % the figures of 40 % are used`},
	} {
		log := &source.Log{}
		h, ok := measuredUnits(t, log).Head(kit.Choice{Unit: "zoom", Focus: &focus, FocusSpan: span}, log)
		if !ok || !h.Zooms {
			t.Fatal(log.All())
		}
		got, _ := photometry.BeamAngle(h.Source.Distribution)
		within(t, fmt.Sprint("beam at ", focus), got, want.beam, 1e-3*want.beam)
		if all := log.All(); (want.says == "") != (len(all) == 0) || want.says != "" && all[0].Message != want.says {
			t.Errorf("at %g: %v", focus, all)
		}
	}
	log := &source.Log{}
	c := measuredUnits(t, log)
	if _, ok := c.Head(kit.Choice{Unit: "spot", Focus: at(0.3), FocusSpan: span}, log); !ok || len(log.All()) != 1 || log.All()[0].Code != kit.CodeNoZoom || log.All()[0].Severity != source.Warning {
		t.Errorf("a focus without a zoom: %v", log.All())
	}
}

// at is a focus or a level.
func at(v float64) *float64 { return &v }

func TestZoomFaults(t *testing.T) {
	for bare, want := range map[string]string{
		"{spot: {lumens: 8, beam: 9}, wide: {lumens: 8, beam: 9}}":  `"wide" is not a focus, and a zoom has one output for each focus`,
		"{spot: {lumens: 8, beam: 9}, 0 %: {lumens: 8, beam: 9}}":   "this zoom has two outputs for spot",
		"{spot: {lumens: 8, beam: 9}, 120 %: {lumens: 8, beam: 9}}": `"120 %" is not a focus, and a zoom has one output for each focus`,
		"{spot: {lumen: 8, beam: 9}}":                               `an output has no key "lumen"`,
	} {
		log := &source.Log{}
		text := strings.Replace(measuredKit, "{spot: {ies: lamp.ies}, 40 %: {ies: lamp.ies}, flood: {lumens: 800, beam: 70}}", bare, 1)
		shipped(t).With([]*source.File{{Name: "k.yaml", Text: []byte(text)}}, log)
		if !slices.ContainsFunc(log.All(), func(d source.Diagnostic) bool { return d.Severity == source.Error && d.Message == want }) {
			t.Errorf("%s: %v, want %s", bare, log.All(), want)
		}
	}
}

// A measured lamp gives what its file says of the tilt at which it hangs: 0 where it looks down, or, of type A,
// level. One that is level in its design position is known only where it is tilted and not rolled.
func TestMeasuredLampByItsTilt(t *testing.T) {
	const down, level, steep, up, rolled = 0, 1, 2, 3, 4
	frames := map[int][3]r3.Vec{ // right, up, axis
		down:   {{X: 1}, {Y: 1}, {Z: -1}},
		level:  {{X: 1}, {Z: 1}, {Y: 1}},
		steep:  {{X: 1}, {Y: math.Sin(math.Pi / 6), Z: math.Cos(math.Pi / 6)}, {Y: math.Cos(math.Pi / 6), Z: -math.Sin(math.Pi / 6)}},
		up:     {{X: 1}, {Y: -1}, {Z: 1}},
		rolled: {{Z: -1}, {X: 1}, {Y: 1}},
	}
	for _, c := range []struct {
		geometry, kind, hangs int
		factor                float64
		known                 bool
	}{
		{1, 1, down, 1, true}, {1, 1, level, 0.6, true}, {1, 1, steep, 0.8, true}, {1, 1, up, 0.9, true}, {1, 1, rolled, 0.6, true},
		{2, 1, down, 1, true}, {2, 1, steep, 0.8, true}, {2, 1, rolled, 1, false},
		{3, 2, level, 0.6, true}, {3, 2, rolled, 1, false},
		{1, 3, level, 1, true}, {1, 3, down, 0.6, true},
	} {
		text := fmt.Sprintf("IESNA91\nTILT=INCLUDE\n%d\n4\n0 60 90 180\n1 .8 .6 .9\n1 -1 1 3 3 %d 2 0 0 0\n1 1 100\n%s\n9 8 7\n9 8 7\n9 8 7\n",
			c.geometry, c.kind, map[int]string{1: "0 45 90\n0 45 90", 2: "-90 0 90\n-90 0 90", 3: "-90 0 90\n-90 0 90"}[c.kind])
		o, log := take(t, "{ies: lamp.ies}", &source.File{Name: "lamp.ies", Text: []byte(text)})
		h, ok := shipped(t).HeadOf(o, kit.Choice{}, log)
		if !ok {
			t.Fatal(log.All())
		}
		flux, f := h.Source.Flux, frames[c.hangs]
		steps := len(h.Steps)
		if known := h.ApplyTilt(f[0], f[1], f[2]); known != c.known {
			t.Errorf("%+v: known is %v", c, known)
		}
		within(t, fmt.Sprintf("%+v", c), h.Source.Flux/flux, c.factor, 1e-9)
		if told := len(h.Steps) > steps; told != c.known {
			t.Errorf("%+v: explained is %v", c, told)
		}
	}
}
