package resolve

import (
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// placeCameras resolves the cameras of the set-up. Exposure comes when the lights are known.
func (r *cameraPass) placeCameras() {
	for i := range r.s.Cameras {
		written := &r.s.Cameras[i]
		leave := r.About(written.Path)
		if c, ok := r.cameraOf(written); ok && r.shown(written.Name) {
			r.out.Cameras = append(r.out.Cameras, c)
		}
		leave()
	}
	if r.doc != nil {
		return // the loader has reported names that no camera bears
	}
	for _, ref := range r.s.Shown {
		r.named(ref, cameraKind)
	}
}

func (r *cameraPass) cameraOf(written *scene.Camera) (plan.Camera, bool) {
	aim, looks := r.lookTarget(written)
	s, ok := r.spotOf(written.Name)
	c := plan.Camera{Name: written.Name, Base: s.Base, Lens: written.Lens.Value, Room: written.Room.Value, Span: written.Span}
	if !written.Lens.Set {
		r.reportMissing(written.Span, "add lens: 35 mm", "the camera has no lens")
	}
	cropped := r.gate(written, &c)
	filters, filtered := r.filters(written)
	c.Filters = filters
	c.Looks, c.Follows = r.whomItSees(written), r.whatItFollows(written)
	if !ok || !looks || !cropped || !filtered || !written.Lens.Set {
		return plan.Camera{}, false
	}
	z, ok := r.lensHeight(written, s)
	if !ok {
		return plan.Camera{}, false
	}
	if r.shown(written.Name) {
		r.assumeCamera(written, z-s.Floor)
	}
	c.Height = z - s.Floor
	if c.Frame, ok = r.lookFrame(written, plan.AtHeight(s.At, z), aim); ok {
		c.Track, ok = r.trackOf(written, &c, aim)
	}
	return c, ok
}

// lookTarget is what a camera looks at: the first person where it does not say, and up the sheet
// where there is nobody.
func (r *cameraPass) lookTarget(c *scene.Camera) (target, bool) {
	switch name := r.firstFor(c.Name); {
	case c.Looks.Set:
		return r.aimed(&c.Looks.Value)
	case name != "":
		return r.aimed(&scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: name}})
	}
	return r.aimed(&scene.Aim{Form: scene.AtBearing})
}

// whomItSees is the person that a camera looks at; "" where it looks at something else.
func (r *cameraPass) whomItSees(c *scene.Camera) string {
	if c.Looks.Set {
		return r.personAt(c.Looks)
	}
	return r.firstFor(c.Name)
}

// whatItFollows is the thing that a camera is pointed at by its name, or who stands at that mark: where that is moved, the camera turns with it,
// unless it stays as it was.
func (r *cameraPass) whatItFollows(c *scene.Camera) string {
	name := r.firstFor(c.Name)
	if c.Looks.Set {
		name = c.Looks.Value.Thing.Name
	}
	if r.staysPointed(c) {
		return ""
	}
	thing, _, _ := strings.Cut(name, ".")
	return thing
}

// staysPointed says whether a camera keeps the direction that it had in the set-up before.
func (r *cameraPass) staysPointed(c *scene.Camera) bool {
	return r.keptCamera(c.Name) != nil && !r.writtenHere(c.Node, "looks")
}

// lookFrame is the frame of a camera: level, its axis to what it looks at.
func (r *cameraPass) lookFrame(c *scene.Camera, at r3.Vec, aim target) (plan.Frame, bool) {
	if r.staysPointed(c) {
		f := r.keptCamera(c.Name).Frame
		f.At = at
		return f, true
	}
	axis, ok := aim.from(at)
	if !ok {
		r.Errorf(report.Either(c.Looks.Set, c.Looks.Span, c.Span), CodeNoAim, "look at something else, or give a bearing: looks: 90", "the point to look at is where %s stands", c.Name)
		return plan.Frame{}, false
	}
	return plan.FrameAlong(at, axis, aim.pan, 0), true
}

// assumeCamera lists the defaults of a camera.
func (r *cameraPass) assumeCamera(c *scene.Camera, height float64) {
	if !c.Height.Set {
		name := r.looksAt(c)
		r.assume(c.Path, "height", strings.TrimSpace(r.Length(height)+report.Either(name != "", ", the eyes of "+name, "")))
	}
	if !c.Looks.Set {
		r.assume(c.Path, "looks", report.Either(r.firstFor(c.Name) != "", r.firstFor(c.Name), "up the sheet"))
	}
}

// gate crops the sensor to the picture's shape, and says so in full where either is a default.
func (r *cameraPass) gate(written *scene.Camera, c *plan.Camera) bool {
	sensor, ok := r.sensor(written.Sensor)
	if !ok {
		return false
	}
	c.Sensor, c.Confusion, c.Readout = sensor.Name, sensor.Confusion, sensor.Readout/1000
	c.Squeeze = written.Squeeze.Or(1)
	all := sensor.Width * c.Squeeze // mm that the gate is wide, unsqueezed
	c.Aspect = written.Aspect.Or(report.Either(c.Squeeze > 1, all/sensor.Height, scene.DefaultAspect))
	width, height := lens.Crop(all, sensor.Height, c.Aspect)
	c.Gate = [2]float64{width / c.Squeeze, height}
	c.HAOV, c.VAOV = lens.AngleOfView(width, c.Lens), lens.AngleOfView(height, c.Lens)
	if r.shown(c.Name) && (!written.Sensor.Set || !written.Aspect.Set) {
		r.assume(written.Path, "picture", fmt.Sprintf("%s of the %s gate%s",
			unit.FormatAspect(c.Aspect), report.Either(sensor.Label != "", sensor.Label, sensor.Name),
			report.Either(c.Squeeze > 1, ", squeezed "+unit.FormatNumber(c.Squeeze)+" times", "")))
	}
	return true
}

// sensor finds a gate in the kit. A kit without the usual one gets it from here: the full
// 4-perforation gate of 35 mm film, 24.89 by 18.66 mm.
func (r *catalogue) sensor(name scene.Given[string]) (*kit.Sensor, bool) {
	s := r.kit.Sensor(name.Or(scene.DefaultSensor))
	switch {
	case s != nil:
		return s, true
	case !name.Set:
		return &kit.Sensor{Entry: kit.Entry{Name: scene.DefaultSensor}, Label: "Super 35", Width: 24.89, Height: 18.66, Confusion: lens.Confusion(24.89, 18.66), Readout: kit.DefaultReadout}, true
	}
	r.unknownEntry(name, "sensor", kit.Names(r.kit.Sensors))
	return nil, false
}
