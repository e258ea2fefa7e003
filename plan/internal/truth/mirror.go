package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A mirror sends light on as if it came from behind it. What a lamp gives by one is found by the image of the receptor: the
// way from a point of the lamp to that image leads through the mirror where the light meets it. A walk that meets a mirror
// goes on mirrored. From a lamp over two mirrors nothing is looked for.

// mattAndShine are the shares of light that a side of a sheet reflects diffusely and that it mirrors.
func mattAndShine(s *solid.Skin) (matt, shine colour.RGB) {
	if s.Mirror == 0 || s.Clear() {
		return s.Reflect, shine
	}
	return s.Reflect.Scale(1 - s.Mirror), s.Reflect.Scale(s.Mirror)
}

// lobePower is the power of a cosine that has half of its value at half of an angle, degrees; 0 for none.
func lobePower(degrees float64) float64 {
	if degrees == 0 {
		return 0
	}
	return -math.Ln2 / math.Log(math.Cos(degrees*math.Pi/360))
}

// sideOf is the side of a face on which a place lies: 0 for the front.
func (f *face) sideOf(at r3.Vec) int {
	if r3.Dot(f.normal, at) > f.offset {
		return 0
	}
	return 1
}

// mirrored is a direction after it has met a face.
func (f *face) mirrored(d r3.Vec) r3.Vec {
	return r3.Sub(d, r3.Scale(2*r3.Dot(d, f.normal), f.normal))
}

// spread picks a direction in the lobe about a mirrored one, and gives the weight that it counts with; not ok where it leads
// into the face.
func (f *face) spread(d r3.Vec, front bool, p *points) (to r3.Vec, weight float64, ok bool) {
	side := 0
	if !front {
		side = 1
	}
	to = f.mirrored(d)
	power := f.lobe[side]
	if power == 0 {
		return to, 1, true
	}
	to = tiltedFrom(to, math.Pow(p.plain.Float(), 1/(power+1)), p.plain.Float())
	leaves, comes := math.Abs(r3.Dot(d, f.normal)), r3.Dot(to, f.normal)*float64(1-2*side)
	return to, comes / max(leaves, comes), comes > 0
}

// shines says whether a walk that has met a face goes on mirrored, as chance decides, and how much what comes of it counts.
func shines(f *face, front bool, p *points) (weight colour.RGB, on bool) {
	side := 0
	if !front {
		side = 1
	}
	shine, matt := f.shine[side].Y(), f.reflect[side].Y()
	if shine == 0 {
		return colour.RGB{1, 1, 1}, false
	}
	share := shine / (shine + matt)
	if p.plain.Float() < share {
		return f.shine[side].Scale(1 / share), true
	}
	return colour.RGB{1, 1, 1}.Scale(1 / (1 - share)), false
}
