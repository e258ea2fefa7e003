package plan

import "testing"

// A camera sees somebody, or it is told what stands between.
func TestCameraSees(t *testing.T) {
	const rooms = "rooms: {a: {size: [4, 3]}, b: {at: [4.15, 0], size: [3, 3]}}\n"
	const scene = "people: {p: {at: [2, 1.5], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"through a blank wall", rooms + scene,
			"warning camera-blocked A cannot see p: b.left stands between [move it to where it has them in sight, or open a door or a gap on the way]"},
		{"through a shut door", rooms + scene + "openings: {d: {door: a.right, along: 1, width: 1}}",
			"warning camera-blocked A cannot see p: d stands between [move it to where it has them in sight, or open a door or a gap on the way]"},
		{"through a gap", rooms + scene + "openings: {d: {gap: a.right, along: 1, width: 1}}", ""},
		{"one of two", rooms + "people: {p: {at: [2, 1.5], faces: 90}, q: {at: [5, 1.5], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n", ""},
		{"neither of two", rooms + "people: {p: {at: [2, 1.5], faces: 90}, q: {at: [1, 1], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n",
			"warning camera-blocked A cannot see anybody: b.left stands between [move it to where it has them in sight, or open a door or a gap on the way]"},
		{"past furniture", rooms + scene + "openings: {d: {gap: a.right, along: 1, width: 1}}\nfurniture: {f: {box: [0.5, 0.5, 2], at: [3, 1.5]}}", ""},
		{"nobody is there", rooms + "cameras: {A: {at: [6, 1.4], lens: 35 mm, looks: 0}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := warned(t, c.scene); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
