package resolve

import (
	"os"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// testdata/faults.txt holds scenes with what the program says of them, as severity, code, line:column,
// message, [hint] and (other places). A scene begins after a line "== what it shows", what it says
// after a line "--". UPDATE_GOLDEN=1 writes what it says today.
func TestFaults(t *testing.T) {
	const file = "testdata/faults.txt"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var updated strings.Builder
	for _, part := range strings.Split(string(text), "== ")[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		body, want, _ := strings.Cut(rest, "--\n")
		want = strings.TrimSpace(want)
		log := &source.Log{}
		doc := opened(t, body, log)
		setups := doc.Setups
		if len(setups) == 0 {
			setups = []string{""}
		}
		for _, setup := range setups {
			if s := Resolve(doc, doc.Scene(setup, log), log); s != nil {
				sane(t, name, s)
			}
		}
		for _, d := range log.All() {
			if d.Severity >= source.Warning && d.Hint == "" {
				t.Errorf("%s: %q comes without a fix", name, d.Message)
			}
		}
		got := strings.TrimSpace(told(log))
		updated.WriteString("== " + name + "\n" + body + "--\n" + got + "\n\n")
		if got != want && os.Getenv("UPDATE_GOLDEN") == "" {
			t.Errorf("%s\n%s\ntells\n%s\nand not\n%s", name, body, got, want)
		}
	}
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile(file, []byte(updated.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// sane checks what holds even after errors: no piece of the set is broken.
func sane(t *testing.T, name string, s *plan.Setup) {
	t.Helper()
	for _, p := range s.Set.Prisms {
		if !plane.IsConvex(p.Base) || !(plane.Area(p.Base) > 0) || !(p.Z1 > p.Z0) {
			t.Errorf("%s: prism %s is broken: %v from %v to %v", name, p.Name, p.Base, p.Z0, p.Z1)
		}
	}
	for i := range s.People {
		saneWalk(t, name, s.People[i].Walk)
	}
	for _, l := range s.Lights {
		near(t, name+": axis of "+l.Name, l.Frame.Axis.X*l.Frame.Axis.X+l.Frame.Axis.Y*l.Frame.Axis.Y+l.Frame.Axis.Z*l.Frame.Axis.Z, 1, 1e-9)
	}
}

// saneWalk checks that a walk is read from its start to its end, as often as is allowed.
func saneWalk(t *testing.T, name string, w *plan.Walk) {
	t.Helper()
	if w == nil {
		return
	}
	n := len(w.Points)
	if n < 2 || n > plan.MostWalkPoints || w.Points[0].Along != 0 || w.Points[n-1].Along != w.Length() {
		t.Errorf("%s: a walk of %v m is read at %d places", name, w.Length(), n)
	}
	for i := 1; i < n; i++ {
		if step := w.Points[i].Along - w.Points[i-1].Along; !(step > 0 && step <= plan.WalkStep+plan.LeastLastStep+1e-9) {
			t.Errorf("%s: a walk has a step of %v m", name, step)
		}
	}
	for _, p := range w.Points {
		near(t, name+": the eyes", p.Face.At.Z, p.Base+w.Eyes, 1e-9)
		near(t, name+": the way on", p.Face.Axis.X*p.Face.Axis.X+p.Face.Axis.Y*p.Face.Axis.Y, 1, 1e-9)
	}
	for i, h := range w.Through {
		if !(h.From <= h.To) || h.From < 0 || h.To > w.Length()+1e-9 || i > 0 && h.From < w.Through[i-1].To-1e-9 {
			t.Errorf("%s: a walk goes through %+v", name, h)
		}
	}
}
