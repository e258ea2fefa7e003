package meter

import (
	"slices"

	"scrimshaw/plan"
)

// jsonWalk is the light along somebody's walk, without the body.
type jsonWalk struct {
	Person  string       `json:"person"`
	Length  float64      `json:"length"` // m, on the plan
	Courses []jsonCourse `json:"courses"`
	Points  []jsonPoint  `json:"points"`
}

// jsonCourse is how a walk keeps to a working stop.
type jsonCourse struct {
	Camera  *string   `json:"camera"`  // null: the key side is judged, as there is no camera
	Working float64   `json:"working"` // T-number
	Best    *float64  `json:"best"`    // m along the walk, of the places that are lit and free; null: there is none
	Worst   *float64  `json:"worst"`   // m along the walk, of the places that are free; null: there is none
	Off     []jsonOff `json:"off"`     // where it is more than one stop from the working stop
}

type jsonOff struct {
	From float64  `json:"from"` // m along the walk
	To   float64  `json:"to"`   // m along the walk
	Over *float64 `json:"over"` // stops, where it is farthest; null of no light
}

// jsonPoint is a place of a walk.
type jsonPoint struct {
	Along   float64     `json:"along"`  // m from the start
	At      [3]float64  `json:"at"`     // m
	Facing  [3]float64  `json:"facing"` // unit vector along the walk: halfway between the two sides
	In      *string     `json:"in"`     // what a body would be in; null: nothing
	Key     *string     `json:"key"`    // the walker's own side; null where both are dark
	Stops   *float64    `json:"stops"`  // key side over fill side; null where the fill side is dark
	Ratio   *float64    `json:"ratio"`  // the ratio of key side to fill side
	Left    jsonLight   `json:"left"`
	Right   jsonLight   `json:"right"`
	Domes   []jsonLight `json:"domes"` // toward the cameras of the set-up, in their order
	Without []jsonKey   `json:"uncomputed"`
}

// jsonLight is a reading along a walk: what jsonReading has of it but its shares.
type jsonLight struct {
	Camera      *string    `json:"camera"` // of a dome
	Facing      [3]float64 `json:"facing"` // unit vector
	Lux         *float64   `json:"lux"`
	Footcandles *float64   `json:"footcandles"`
	Stop        *float64   `json:"stop"`
	Over        *float64   `json:"over"`
	CCT         *float64   `json:"cct"`
	Duv         *float64   `json:"duv"`
	Error       *float64   `json:"error"`
}

func (w *Walk) json() jsonWalk {
	out := jsonWalk{Person: w.Person, Length: Rounded(w.Length), Courses: []jsonCourse{}, Points: []jsonPoint{}}
	for i := range w.Courses {
		out.Courses = append(out.Courses, w.courseJSON(&w.Courses[i]))
	}
	for i := range w.Points {
		out.Points = append(out.Points, w.pointJSON(&w.Points[i]))
	}
	return out
}

func (w *Walk) courseJSON(c *Course) jsonCourse {
	along := func(point *int) *float64 {
		if point == nil {
			return nil
		}
		return RoundedOrNull(&w.Points[*point].Along)
	}
	out := jsonCourse{Camera: OrNull(c.Camera), Working: Rounded(c.Working), Best: along(c.Best), Worst: along(c.Worst), Off: []jsonOff{}}
	for i := range c.Off {
		o := &c.Off[i]
		out.Off = append(out.Off, jsonOff{Rounded(o.From), Rounded(o.To), RoundedOrNull(o.Over)})
	}
	return out
}

func (w *Walk) pointJSON(p *WalkPoint) jsonPoint {
	out := jsonPoint{Along: Rounded(p.Along), At: triple(p.At), Facing: triple(p.Facing), In: OrNull(p.In), Key: OrNull(p.Side),
		Left: p.Left.lightJSON(), Right: p.Right.lightJSON(), Domes: []jsonLight{}}
	keys := slices.Concat(p.Left.Uncomputed, p.Right.Uncomputed)
	if p.Contrast != nil {
		stops, ratio := Rounded(p.Contrast.Stops), Rounded(p.Contrast.Ratio)
		out.Stops, out.Ratio = &stops, &ratio
	}
	for i := range p.Domes {
		d := p.Domes[i].lightJSON()
		d.Camera = &w.Courses[i].Camera
		out.Domes, keys = append(out.Domes, d), append(keys, p.Domes[i].Uncomputed...)
	}
	out.Without = jsonKeys(plan.Unique(keys))
	return out
}

func (r *Reading) lightJSON() jsonLight {
	return jsonLight{Facing: triple(r.Facing), Lux: RoundedOrNull(r.Lux), Footcandles: RoundedOrNull(r.Footcandles), Stop: RoundedOrNull(r.Stop),
		Over: RoundedOrNull(r.Over), CCT: RoundedOrNull(r.CCT), Duv: RoundedOrNull(r.Duv), Error: RoundedOrNull(r.Error)}
}
