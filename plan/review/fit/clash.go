package fit

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// clashCheck is what it means that equipment lies in a kind of thing.
type clashCheck struct {
	kinds []clash.Kind
	codes []string
	words string // what it looks for
	run   func(r *collisions, c *clashFinding)
}

// ofClashes are the checks of what lies in what.
var ofClashes = []clashCheck{
	{[]clash.Kind{clash.Set}, []string{CodeLightInSolid, CodeInSolid}, "heads, arms, counterweights, posts, poles, lifts, sheets and cameras in walls, floors, ceilings, panes, doors and furniture", (*collisions).inSet},
	{[]clash.Kind{clash.Light, clash.Grip, clash.Camera}, []string{CodeClash}, "equipment in other equipment", (*collisions).inEquipment},
	{[]clash.Kind{clash.Person}, []string{CodeHitsPerson}, "equipment in somebody, where they are and at each mark", (*collisions).inPerson},
	{[]clash.Kind{clash.Walk}, []string{CodeInWalk}, "equipment in the way of a walk", (*collisions).inWalk},
	{[]clash.Kind{clash.Swing}, []string{CodeInSwing}, "equipment in the way of a door or a window that swings", (*collisions).inSwing},
	{[]clash.Kind{clash.Way}, []string{CodeOnTrack}, "equipment in the way of a camera on its track", (*collisions).inWay},
	{[]clash.Kind{clash.Ground}, []string{CodeStandTight}, "a camera between the legs of a stand", (*collisions).inLegs},
	{[]clash.Kind{clash.Over}, []string{CodeOverPerson}, "equipment that hangs over somebody", (*collisions).overPerson},
}

// collisions words what lies in what.
type collisions struct{ *checker }

// clashFinding is a clash that no other check tells, with the place and the words of what lies in the other.
type clashFinding struct {
	clash.Clash
	span source.Span
	who  string // "the arm and the counterweight of 2 day"
	many bool   // several things
	mend string // the move that frees it
}

// check words what lies in what, but for what other checks tell.
func (r *collisions) check() {
	hit := map[[2]string]bool{} // who is reached into already, by what
	for _, c := range clash.Find(r.out) {
		c.Parts = slices.DeleteFunc(c.Parts, func(p body.Part) bool {
			if (p == body.Boom || p == body.Weight) && c.In.Kind == clash.Set && r.told[toldClash{c.Of.Name, body.Stand, c.In.Name}] {
				return true // the base of the boom has to go elsewhere, and takes them along
			}
			return (c.In.Kind == clash.Set || c.In.Kind == clash.Person) && (r.told[toldClash{c.Of.Name, p, ""}] || r.told[toldClash{c.Of.Name, p, c.In.Name}])
		})
		if len(c.Parts) == 0 || r.unsound(c.Of) || r.unsound(c.In) || (c.In.Kind == clash.Over || c.Of.Kind == clash.Ground) && hit[[2]string{c.Of.Name, c.In.Name}] ||
			c.Of.Kind == clash.Ground && c.In.Kind == clash.Camera && hit[[2]string{c.In.Name, c.Of.Name}] {
			continue
		}
		hit[[2]string{c.Of.Name, c.In.Name}] = true
		name := plan.CameraOf(c.Of.Name)
		leave := r.About(r.things[name].path)
		f := clashFinding{Clash: c, span: r.things[name].at}
		f.who, f.many = r.partsOf(c.Of, c.Parts)
		f.mend = r.mendOf(&c)
		for _, k := range ofClashes {
			if slices.Contains(k.kinds, c.In.Kind) {
				k.run(r, &f)
			}
		}
		leave()
	}
}

// unsound says whether a thing stands where nothing can, as an error says already.
func (r *collisions) unsound(of clash.Side) bool {
	return r.told[toldClash{of.Name, body.Head, ""}] || r.told[toldClash{of.Name, body.Sheet, ""}]
}

// heldBy are the words of the parts that hold a thing, of one on a stand and of one on a lift.
var heldBy = map[body.Part]string{
	body.Stand: "the stand", body.Legs: "the base", body.Boom: "the arm", body.Weight: "the counterweight", body.Pole: "the pole",
}

// nameOf is a piece of equipment by its name: "2 day", "A at the start".
func (r *collisions) nameOf(side clash.Side) string {
	if side.Kind != clash.Camera && !r.isCameras(side) {
		return r.out.Numbered(side.Name)
	}
	if camera := r.out.CameraNamed(side.Name); camera != nil {
		return postWords(camera)
	}
	return plan.CameraWords(side.Name)
}

// isCameras says whether a side is the ground of the legs of a camera, and not of a stand.
func (r *collisions) isCameras(side clash.Side) bool {
	return side.Kind == clash.Ground && r.out.CameraNamed(side.Name) != nil
}

// partsOf names the parts of a clash, and says whether they are several.
func (r *collisions) partsOf(side clash.Side, parts []body.Part) (who string, many bool) {
	of := r.nameOf(side)
	lift := r.onLift(side.Name)
	var held []string
	for _, p := range parts {
		switch {
		case p == body.Ground:
			held = append(held, "the legs")
		case p == body.Head && side.Kind == clash.Camera:
			held = append(held, "the body")
		case p == body.Head || p == body.Sheet:
			return of, false // where it is, what holds it goes with it
		case p == body.Stand && side.Kind == clash.Camera:
			held = append(held, "the legs")
		case p == body.Stand && lift:
			held = append(held, "the mast")
		default:
			held = append(held, heldBy[p])
		}
	}
	return strings.Join(held, " and ") + " of " + of, len(held) > 1 || len(held) == 1 && held[0] == "the legs"
}

// farthestMove is the longest move that is worth saying, m: what would have to go farther is held otherwise.
const farthestMove = 2.0

// mendOf says how to clear a clash.
func (r *collisions) mendOf(c *clash.Clash) string {
	what := r.out.Numbered(c.Of.Name)
	if c.Of.Kind == clash.Ground {
		return "draw its legs in and put bags on them, or put " + plan.CameraOf(c.Of.Name) + " elsewhere"
	}
	if c.Of.Kind == clash.Camera {
		what = plan.CameraOf(c.Of.Name)
	}
	arm := slices.Contains(c.Parts, body.Boom) || slices.Contains(c.Parts, body.Weight)
	far := r3.Norm(c.Move)
	if far == 0 || far > farthestMove {
		return report.Either(arm, "put the base of its boom elsewhere, or take a shorter arm", "put "+what+" elsewhere, or hold it otherwise")
	}
	words := "move " + what + " " + r.Length(r.RoundUp(far)) + " " + onSheet(plan.InPlan(c.Move))
	return report.Either(arm, words+", or put the base of its boom elsewhere", words)
}

// verb is a verb of one or of several.
func (c *clashFinding) verb(one, several string) string { return report.Either(c.many, several, one) }

func (r *collisions) inSet(c *clashFinding) {
	code := CodeInSolid
	if c.Of.Kind == clash.Light && slices.Contains(c.Parts, body.Head) {
		code = CodeLightInSolid
	}
	r.Warnf(c.span, code, c.mend, "%s %s %s deep into %s", c.who, c.verb("reaches", "reach"), r.Length(c.Deep), c.In.Name)
}

func (r *collisions) inEquipment(c *clashFinding) {
	if c.Of.Kind == clash.Ground { // as no scene describes legs, they are a note
		r.Infof(c.span, CodeStandTight, c.mend, "%s stands between the legs of %s, %s across as they usually stand", r.nameOf(c.In), r.nameOf(c.Of), r.Length(body.LegsOfCamera(r.out.CameraNamed(c.Of.Name)).Foot))
		return
	}
	other, _ := r.partsOf(c.In, c.Into)
	r.Warnf(c.span, CodeClash, c.mend, "%s %s %s deep into %s", c.who, c.verb("reaches", "reach"), r.Length(c.Deep), other)
}

// inLegs notes a camera whose post is among the legs of a stand.
func (r *collisions) inLegs(c *clashFinding) {
	r.Infof(c.span, CodeStandTight, c.mend, "%s stands between the legs of the %s of %s", r.nameOf(c.Of), report.Either(r.onLift(c.In.Name), "lift", "stand"), r.nameOf(c.In))
}

// onLift says whether a light or a piece of grip is on a lift.
func (r *collisions) onLift(name string) bool {
	if l := r.out.LightNamed(name); l != nil {
		return l.Mount.Kind == term.Lift
	}
	g := r.out.GripNamed(name)
	return g != nil && g.Mount.Kind == term.Lift
}

func (r *collisions) inPerson(c *clashFinding) {
	if c.Of.Kind == clash.Ground {
		r.Infof(c.span, CodeStandTight, c.mend, "%s, %s across as they usually stand, reach %s into %s", c.who, r.Length(body.LegsOfCamera(r.out.CameraNamed(c.Of.Name)).Foot), r.Length(c.Deep), c.In.Name)
		return
	}
	r.Warnf(c.span, CodeHitsPerson, c.mend, "%s %s %s deep into %s", c.who, c.verb("reaches", "reach"), r.Length(c.Deep), c.In.Name)
}

func (r *collisions) inWalk(c *clashFinding) {
	r.Warnf(c.span, CodeInWalk, c.mend+"; or lead the walk round it", "%s %s in the way of the walk of %s", c.who, c.verb("stands", "stand"), c.In.Name)
}

func (r *collisions) inWay(c *clashFinding) {
	r.Warnf(c.span, CodeOnTrack, c.mend+"; or hang it higher", "%s %s in the way of %s along its track", c.who, c.verb("is", "are"), c.In.Name)
}

func (r *collisions) inSwing(c *clashFinding) {
	o := r.out.OpeningNamed(c.In.Name)
	if c.Of.Kind == clash.Camera && r.told[toldClash{plan.CameraOf(c.Of.Name), body.Rail, o.Name}] {
		return // what its track says of the leaf says it of the camera too
	}
	severity := report.Either(o.Escape, source.Warning, source.Info)
	r.Log.Add(r.Diagnostic(severity, c.span, CodeInSwing, c.mend, "%s %s in the way of the leaf of %s%s", c.who, c.verb("is", "are"), o.Name, stopWords(o, clash.StopAt(r.out, c.Of, o))))
}

func (r *collisions) overPerson(c *clashFinding) {
	r.Infof(c.span, CodeOverPerson, "a safety bond on it, bags on its stand, and nobody under it while it moves", "%s %s over %s", c.who, c.verb("hangs", "hang"), c.In.Name)
}
