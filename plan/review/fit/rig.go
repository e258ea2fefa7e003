package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/rig"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// held is a light or a piece of grip by what holds it.
type held struct {
	*checker
	name  string
	mount *plan.Mount
	base  float64  // z of what its stand stands on, m
	top   float64  // z of what is held, m
	at    r2.Vec   // m
	mass  float64  // kg; 0: nothing says it
	prop  bool     // a lamp of the set
	down  *float64 // where the wind is noted at which it comes down, m/s
}

func lightHeld(r *checker, l *plan.Light) held {
	return held{r, l.Name, &l.Mount, l.Base, l.Frame.At.Z, plan.InPlan(l.Frame.At), l.Head.Mass, l.Head.Class == term.Practical, &l.TakeDown}
}

func gripHeld(r *checker, g *plan.Grip) held {
	h := held{r, g.Name, &g.Mount, g.Base, g.Frame.At.Z, plan.InPlan(g.Frame.At), 0, false, &g.TakeDown}
	if g.Item != nil {
		h.mass = g.Item.Mass
	}
	return h
}

func (h *held) span() source.Span { return h.things[h.name].at }
func (h *held) numbered() string  { return h.out.Numbered(h.name) }

// item is an item of the catalogue; nil where it has none of that name.
func (h *held) item(name string) *kit.Item { return h.out.Kit.ItemOf(name) }

// boom tells the counterweight of a boom, and warns of an arm or a stand that does not carry what is on it.
func (h held) boom() bool {
	if h.mount.Kind != term.Boom || h.mass == 0 || h.prop {
		return true
	}
	counter := rig.Counterweight(h.mass, h.mount.Arm, rig.CounterArm)
	h.Infof(h.span(), CodeBoomBalance, "", "%s on its boom: %s at %s turn it with %.0f N m, and %s at %s behind the stand hold that, without the arm's own mass", h.numbered(),
		unit.FormatMass(h.mass), h.Length(h.mount.Arm), math.Round(rig.Moment(h.mass, h.mount.Arm)), unit.FormatMass(math.Ceil(2*counter-1e-9)/2), h.Length(rig.CounterArm))
	arm, bears := h.item(plan.BoomArm), h.mass+counter
	if arm != nil {
		bears += arm.Mass
		if h.mount.Arm > arm.Length || h.mass > arm.Load {
			h.Warnf(h.span(), CodeBoomLoad, "take a shorter arm, a lighter head, or a boom that is made for it", "the boom of %s is to hold %s at %s, and that of the kit carries %s at %s",
				h.numbered(), unit.FormatMass(h.mass), h.Length(h.mount.Arm), unit.FormatMass(arm.Load), h.Length(arm.Length))
		}
	}
	if stand := h.mount.Stand; stand != nil && bears > stand.Load {
		h.Warnf(h.span(), CodeBoomLoad, h.strongerStand(bears), "the stand of %s bears %s with its boom and counterweight, and carries %s (%s)",
			h.numbered(), unit.FormatMass(math.Round(bears*10)/10), unit.FormatMass(stand.Load), stand.Name)
	}
	return true
}

// strongerStand names the lightest stand of the catalogue that bears so much, kg, and goes as high as what it holds.
func (h *held) strongerStand(bears float64) string {
	var best *kit.Stand
	for _, s := range h.out.Kit.Stands {
		if s.Load >= bears && s.Highest >= h.top-h.base && (best == nil || s.Mass < best.Mass) {
			best = s
		}
	}
	if best == nil {
		return "take a shorter arm, or hang it otherwise"
	}
	return "write stand: " + best.Name + ", or take a shorter arm"
}

// pole tells the force of a pole, and warns of one that is too long or too weak.
func (h held) pole() bool {
	if h.mount.Kind != term.Pole || len(h.mount.PoleEnds) != 2 {
		return true
	}
	long := r2.Norm(r2.Sub(h.mount.PoleEnds[1], h.mount.PoleEnds[0]))
	pole := h.item(plan.CeilingPole)
	if pole != nil && (long > pole.Length || h.mass > pole.Load) {
		h.Warnf(h.span(), CodePole, "hang it otherwise, or take a pole that is made for it", "the pole of %s is to bear %s over %s, and that of the kit carries %s over %s",
			h.numbered(), unit.FormatMass(h.mass), h.Length(long), unit.FormatMass(pole.Load), h.Length(pole.Length))
		return true
	}
	if h.mass > 0 && pole != nil {
		load := h.mass + pole.Mass
		h.Infof(h.span(), CodePole, "pads under both ends, and a second fixing on what it bears", "the pole of %s presses with %.0f N on %s and the wall across: that bears %s by friction (%s on plaster)",
			h.numbered(), math.Ceil(rig.PoleForce(load, rig.WallFriction)/10)*10, h.mount.On, unit.FormatMass(load), unit.FormatNumber(rig.WallFriction))
	}
	return true
}

// overPlatform is how far over the platform of a lift the face of a lamp is at most, m: common practice.
const overPlatform = 1.0

// lift warns of a lift that does not go as high as its lamp, or higher than there is room or than any of the kit goes with it.
func (h held) lift() bool {
	if h.mount.Kind != term.Lift {
		return true
	}
	rise := h.top - h.base
	room := h.out.RoomHolding(h.mount.Base, h.out.Spots[h.name].Room)
	highest := h.out.Kit.HighestLift()
	switch {
	case room != nil && h.base+h.mount.Arm > room.CeilingAt(h.mount.Base):
		h.Warnf(h.span(), CodeLift, "write mount: {lift: "+h.Coordinate(max(0, math.Floor(100*rise)/100))+"}, or less", "the lift of %s is to go up to %s, and the ceiling of %s is %s over what it stands on",
			h.numbered(), h.Length(h.mount.Arm), room.Name, h.Length(room.CeilingAt(h.mount.Base)-h.base))
	case highest != nil && h.mount.Arm > highest.Length:
		h.Warnf(h.span(), CodeLift, "take a platform that is driven, with who may drive it; or hang it lower", "the lift of %s is to go up to %s, and those of the kit, cranked by hand, go to %s",
			h.numbered(), h.Length(h.mount.Arm), h.Length(highest.Length))
	case highest != nil && h.mount.Lift == nil:
		h.Warnf(h.span(), CodeLift, "take a lighter head, or a platform that is driven, with who may drive it", "%s weighs %s, and no lift of the kit carries that to %s",
			h.numbered(), unit.FormatMass(h.mass), h.Length(h.mount.Arm))
	case rise > h.mount.Arm+overPlatform:
		h.Warnf(h.span(), CodeLift, "take a higher lift, or lower the lamp", "%s is %s over what its lift stands on, and that goes to %s", h.numbered(), h.Length(rise), h.Length(h.mount.Arm))
	}
	return true
}

// edgePlaces is how many places of the circle of a stand's feet are asked whether something is under them.
const edgePlaces = 36

// edge warns of a stand on a deck or a table whose feet reach over its edge.
func (h held) edge() bool {
	if !h.mount.Kind.OnLegs() || h.mount.On == "" || h.prop || !h.carried(h.mount.Base) {
		return true
	}
	over := 0.0
	for i := range edgePlaces {
		way := plane.Direction(360 * float64(i) / edgePlaces)
		over = max(over, h.mount.Foot/2-h.carriedTo(way))
	}
	if over > legsSlack {
		h.Warnf(h.span(), CodeOverEdge, "move it in, take a stand with a smaller foot, or clamp it", "the legs of the stand of %s, %s across, reach %s over the edge of %s",
			h.numbered(), h.Length(h.mount.Foot), h.Length(over), h.mount.On)
	}
	return true
}

// carriedTo is how far from the middle of a stand something is under its feet in one direction, m, at most to where they stand.
func (h *held) carriedTo(way r2.Vec) float64 {
	low, high := 0.0, h.mount.Foot/2
	if h.carried(r2.Add(h.mount.Base, r2.Scale(high, way))) {
		return high
	}
	for range 20 {
		if middle := (low + high) / 2; h.carried(r2.Add(h.mount.Base, r2.Scale(middle, way))) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// carried says whether something is under a foot.
func (h *held) carried(p r2.Vec) bool {
	for i := range h.out.Furniture {
		for _, part := range h.out.Furniture[i].Parts {
			if math.Abs(part.Z1-h.base) <= body.LegStep && plane.Contains(p, part.Outline, -plane.Grain) {
				return true
			}
		}
	}
	return false
}
