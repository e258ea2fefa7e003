package resolve

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
)

// slatPitch is how far apart the slats of a blind hang, as a share of their width: shut, they overlap a little (common
// practice).
const slatPitch = 0.9

// reveal is how far behind the inside face of the wall the slats of a blind begin, m.
const reveal = 0.01

// slats is what the slats of a blind are called after their opening.
const slats = "slats"

// dress hangs curtains and blinds into an opening.
func (r *wallPass) dress(o *plan.Opening) {
	written := &r.s.Openings[r.things[o.Name].index]
	leave := r.About(written.Path)
	defer leave()
	for i := range written.Dressing {
		d := &written.Dressing[i]
		if d.Slat > 0 {
			r.hangBlind(o, d)
		} else {
			r.hangCurtain(o, d)
		}
	}
}

// hangCurtain hangs the two halves of a curtain before an opening, in the room.
func (r *wallPass) hangCurtain(o *plan.Opening, d *scene.Dressing) {
	c := r.kit.ClothOf(d.Cloth.Name)
	foot, top, ok := r.curtainHeights(o, d)
	left, right, drawn := r.drawn(o, d)
	if c == nil || !ok || !drawn {
		return
	}
	skin := clothSkin(c)
	into := r2.Scale(-d.In.Or(scene.DefaultCurtainIn), o.Outward)
	lap := func(end r2.Vec, way float64) r2.Vec {
		past := r2.Add(end, r2.Scale(way*scene.DefaultCurtainLap, o.Rightward()))
		if r.out.RoomNamed(o.Room).Holds(r2.Add(past, into)) {
			return r2.Add(past, into)
		}
		return r2.Add(end, into)
	}
	half := func(a, b r2.Vec) {
		hung := plan.Dressing{Cloth: c.Name, A: a, B: b, Foot: foot, Top: top}
		hung.IDs = append(hung.IDs, r.sheet(o.Name+"."+c.Name, upright(a, b, foot, top), skin, skin))
		o.Dressing = append(o.Dressing, hung)
	}
	along := func(x float64) r2.Vec { return r2.Add(r2.Add(o.Left, r2.Scale(x, o.Rightward())), into) }
	switch width := o.Width(); {
	case left+right >= width-plane.Grain:
		half(lap(o.Left, -1), lap(o.Right, 1))
	default:
		if left > plane.Grain {
			half(lap(o.Left, -1), along(left))
		}
		if right > plane.Grain {
			half(along(width-right), lap(o.Right, 1))
		}
	}
}

// drawn is how far the halves of a curtain reach from the ends of an opening, m.
func (r *wallPass) drawn(o *plan.Opening, d *scene.Dressing) (left, right float64, ok bool) {
	width := o.Width()
	if !d.Drawn.Set {
		return width / 2, width / 2, true
	}
	left, right = d.Drawn.Value[0].Of(width), d.Drawn.Value[1].Of(width)
	if over := max(left, right) - width; over > plane.Grain {
		r.Errorf(d.Drawn.Span, CodeCurtainWide, "either half may be at most "+r.Length(width)+", or 100 %; where both together are as much the curtain is closed",
			"half of the curtain of %s reaches over %s, and it is only %s wide", o.Name, r.Length(max(left, right)), r.Length(width))
		return 0, 0, false
	}
	return left, right, true
}

// curtainHeights are the edges of a curtain: a little past those of the opening, and in the room.
func (r *wallPass) curtainHeights(o *plan.Opening, d *scene.Dressing) (foot, top float64, ok bool) {
	room := r.out.RoomNamed(o.Room)
	ceiling := min(room.CeilingAt(o.Left), room.CeilingAt(o.Right))
	foot, top = max(room.Base, o.Sill-scene.DefaultCurtainLap), min(ceiling, o.Head+scene.DefaultCurtainLap)
	if d.Foot.Set {
		foot = room.Base + d.Foot.Value
	}
	if d.Top.Set {
		top = room.Base + d.Top.Value
	}
	switch {
	case top > ceiling+plane.Grain:
		r.Errorf(d.Top.Span, CodeCurtainHigh, "top may be at most "+r.Length(ceiling-room.Base), "the curtain of %s ends %s over the ceiling of %s", o.Name, r.Length(top-ceiling), room.Name)
	case foot >= top-plane.Grain:
		r.Errorf(d.Span, CodeCurtainHigh, "give it a top over its bottom", "the curtain of %s ends at %s, and begins at %s", o.Name, r.Length(top-room.Base), r.Length(foot-room.Base))
	default:
		return foot, top, true
	}
	return 0, 0, false
}

// hangBlind hangs the slats of a blind into the hole of an opening, from its head down.
func (r *wallPass) hangBlind(o *plan.Opening, d *scene.Dressing) {
	height := (o.Head - o.Sill) * d.Drop.Or(1)
	if d.Slat > o.Head-o.Sill {
		r.Errorf(d.Span, CodeCurtainWide, "a slat may be at most "+r.Length(o.Head-o.Sill)+" wide", "the slats of the blind of %s are %s wide, and it is only %s high",
			o.Name, r.Length(d.Slat), r.Length(o.Head-o.Sill))
		return
	}
	sin, cos := plane.Sincos(d.Tilt)
	middle := r2.Scale(reveal+d.Slat/2, o.Outward)
	hung := plan.Dressing{A: r2.Add(o.Left, middle), B: r2.Add(o.Right, middle), Foot: o.Head - height, Top: o.Head, Slat: d.Slat, Tilt: d.Tilt}
	skin := paint(grey(scene.DefaultSlatReflectance))
	inward := r2.Scale(-d.Slat/2*cos, o.Outward)
	fall := d.Slat / 2 * sin
	for n := range int(math.Floor(height/(slatPitch*d.Slat) + 1e-9)) {
		z := o.Head - (float64(n)+0.5)*slatPitch*d.Slat
		corner := func(end r2.Vec, side float64) r3.Vec {
			at := r2.Add(end, r2.Scale(side, inward))
			return r3.Vec{X: at.X, Y: at.Y, Z: z - side*fall}
		}
		hung.IDs = append(hung.IDs, r.sheet(o.Name+"."+slats, []r3.Vec{corner(hung.A, -1), corner(hung.B, -1), corner(hung.B, 1), corner(hung.A, 1)}, skin, skin))
	}
	o.Dressing = append(o.Dressing, hung)
}

// gelledUnder is the white, K, that gels on glass are reckoned for: what a gel makes of one light hardly differs from what it makes of the next.
const gelledUnder = 5600

// gelled is glass with the gels of an opening on it: what they make of daylight, which is what comes through windows.
func (r *wallPass) gelled(o *plan.Opening, skin solid.Skin) solid.Skin {
	var stack []colour.Filter
	for _, name := range o.Gels {
		if g := r.kit.Gel(name); g != nil {
			stack = append(stack, g.Filter())
		}
	}
	if len(stack) == 0 {
		return skin
	}
	daylight := colour.White{Kelvin: gelledUnder}
	after, before := colour.ThroughGels(daylight, stack), daylight.RGB()
	for c := range skin.Direct {
		gel := after.Transmittance * after.RGB[c] / before[c]
		skin.Direct[c], skin.Diffuse[c] = skin.Direct[c]*gel, skin.Diffuse[c]*gel
	}
	return skin
}
