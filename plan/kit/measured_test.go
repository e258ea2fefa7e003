package kit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
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
	o.Take(read(f), &source.Context{Log: log})
	return o, log
}

// A photometric file is the whole of an output: flux, opening, power, and how it is drawn.
func TestMeasuredOutput(t *testing.T) {
	for _, c := range []struct {
		opening string
		power   float64
		want    photometry.Opening
		class   kit.Class
	}{
		{"0 0 0", 1, photometry.Opening{}, kit.Bare},
		{"0 0 0", 50, photometry.Opening{}, kit.Lensed},
		{"0.6 1.2 0", 1, photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}, kit.Panel},
		{"-0.2 -0.2 0", 20, photometry.Opening{Form: photometry.Disc, Width: 0.2}, kit.Lensed},
		{"-0.1 1.5 -0.1", 1, photometry.Opening{Form: photometry.Tube, Width: 1.5, Height: 0.1}, kit.Linear},
		{"-0.5 -0.5 -0.5", 1, photometry.Opening{Form: photometry.Sphere, Width: 0.5}, kit.Lantern},
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
		within(t, "Y", h.Drive(1).Y(), 1, 1e-12)
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
    doc: a spot with a zoom, measured at both ends
    label: spot
    class: lensed
    technology: led
    power: 90 W
    kelvin: 5600 K
    front: ring
    lumens: 2000
    outputs:
      bare: {ies: lamp.ies}
      narrow: {ies: lamp.ies}
      wide: {lumens: 800, beam: 50}
modifiers:
  narrow: {doc: zoom at its narrow end, label: narrow, fits: [ring], efficiency: 60 %, beam: 15}
  wide: {doc: zoom at its wide end, label: wide, fits: [ring], efficiency: 60 %, beam: 50}
  cells: {doc: a grid, label: cells, fits: [ring], efficiency: 90 %, grid: [30, 30]}
`

// One file for each modifier, or each end of a zoom: a unit of a kit file takes its outputs from files.
func TestMeasuredUnit(t *testing.T) {
	log := &source.Log{}
	c := shipped(t).With([]*source.File{{Name: "k.yaml", Text: []byte(measuredKit)}}, log)
	u := c.Unit("spot")
	for i := range u.Outputs {
		if o := &u.Outputs[i].Output; o.IES != "" {
			power := map[string]float64{"": 10, "narrow": 50}[u.Outputs[i].Modifier]
			o.Take(kit.ReadIES(iesOf(power, "-0.1 -0.1 0")), &source.Context{Log: log})
		}
	}
	for modifier, beam := range map[string]float64{kit.Unmodified: 42.17, "narrow": 19.04, "wide": 50} {
		h, ok := c.Head(kit.Choice{Unit: "spot", Modifier: modifier}, log)
		if !ok || len(log.All()) > 0 {
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
