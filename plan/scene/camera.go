package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

var cameraTable = tableOf("camera", "One camera.", nil,
	value("at", place, func(m *Camera) *Given[Place] { return &m.At },
		"Where the entrance of its lens is: of a camera on a `track`, at the start.", "[3.3, 0.5]", "required; the first place of a `track`").neededWithout("track"),
	value("height", height, func(m *Camera) *Given[float64] { return &m.Height },
		"Height of the lens above the floor.", "1.25", "the eyes of the person it looks at, else "+inMetres(DefaultEyeLevel, 1)),
	value("looks", aim, func(m *Camera) *Given[Aim] { return &m.Looks }, "What it looks at.", "ruth", "the first person, else up the sheet"),
	value("lens", quantity("a lens", "32 mm", focals, between(1, 2000)), func(m *Camera) *Given[float64] { return &m.Lens },
		"Focal length.", "32 mm", "").needed(),
	value("sensor", text("a sensor", "super-35"), func(m *Camera) *Given[string] { return &m.Sensor },
		"Gate of the camera, by its name in the kit.", "super-35", "the Super 35 gate"),
	value("aspect", quantity("an aspect", "2.39", aspects, between(0.2, 10)),
		func(m *Camera) *Given[float64] { return &m.Aspect },
		"Shape of the frame, cropped from the gate.", "2.39", unit.FormatAspect(DefaultAspect)+", with a `squeeze` all of the gate"),
	cameraExposure(),
	into("track", source.ListOf("a track", "[[3.3, 0.5], [2.4, 0.5]]", place, 2, 100),
		func(m *Camera, v []Place, n *source.Node) { m.Track, m.TrackPlaces = n, v },
		"The rails it moves along, by all their places: it starts at the first of them. The lens keeps its height; the camera goes on looking at whom "+
			"or what it `looks` at, and by a bearing it keeps its direction.", "[[3.3, 0.5], [2.4, 0.5]]", "none"),
	value("squeeze", quantity("a squeeze", "2", numbers, between(1, 2)), func(m *Camera) *Given[float64] { return &m.Squeeze },
		"Of an anamorphic lens: by how much it draws the picture together across. The frame is as wide as the gate times that.", "2", "1"),
	value("room", quantity("a room around the frame", "5 %", percents, between(0, 0.5)),
		func(m *Camera) *Given[float64] { return &m.Room },
		"Safety margin about the frame, on each side, as a share of its width: equipment that lies in it is a note, in the frame a warning.", "5 %", "none"),
	into("filter", filterList, func(m *Camera, v []Ref, _ *source.Node) { m.Filter = v },
		"Filters before the lens: an ND by its density, or names of the kit's filters and correction gels. Stops and mireds add up.", "[ND 0.6]", "none"),
).elsewhere(besideCamera).meant(otherCameraKeys)

// besideCamera says where a key of a camera belongs that is one of its exposure, or of the scene's, and what is sharp.
func besideCamera(key string, _ *source.Context) string {
	switch {
	case cameraExposureTable.Field(key) != nil:
		return "put it into the camera's exposure: {" + key + ": " + cameraExposureTable.Field(key).Example + "}"
	case exposureTable.Field(key) != nil:
		return "put it under the scene's exposure"
	case key == "focus":
		return "it is sharp on whom or what it looks at: write looks: ada"
	}
	return ""
}

// checkCamera puts a camera that moves at the start of its track, where nothing else says its place.
func checkCamera(m *Camera, n *source.Node, _ *source.Context) {
	if n.Key("at") == nil && len(m.TrackPlaces) > 0 {
		m.At = Given[Place]{Value: m.TrackPlaces[0], Set: true, Span: m.Track.Span}
	}
}

// cameraExposure is what a camera sets for itself; what holds for the whole file is named apart.
func cameraExposure() entry[Camera] {
	e := into("exposure", mapOf("an exposure", "{stop: T4}", cameraExposureTable),
		func(m *Camera, v Exposure, _ *source.Node) { m.Exposure = v },
		"What this camera sets differently from the scene.", "{stop: T4}", "the scene's")
	read := e.Read
	e.Read = func(m *Camera, n *source.Node, c *source.Context) {
		for _, key := range []string{"meter", "constant"} {
			if k := n.Key(key); k != nil {
				c.ErrorAt(k.Span, CodeWrongKey, "put it under the scene's exposure",
					"%s holds for the whole file, not for one camera", key)
				return
			}
		}
		read(m, n, c)
	}
	return e
}
