package scene

// parts are the maps of named things.
func parts() []part {
	return []part{
		section[Scene, Material, *Material]{
			key: "materials", doc: "Surfaces, by their names.", example: "{limewash: {reflectance: 0.62}}",
			table: materialTable, at: func(s *Scene) *[]Material { return &s.Materials }, check: checkMaterial,
		},
		section[Scene, Room, *Room]{
			key: "rooms", doc: "Rooms. A scene without rooms is open ground.", example: "{kitchen: {size: [3.6, 3.1]}}",
			table: roomTable, at: func(s *Scene) *[]Room { return &s.Rooms }, check: checkRoom,
		},
		section[Scene, Opening, *Opening]{
			key: "openings", doc: "Windows, doors and gaps.", example: "{street: {window: kitchen.left, width: 1.4}}",
			table: openingTable, at: func(s *Scene) *[]Opening { return &s.Openings }, check: checkOpening,
		},
		section[Scene, Furniture, *Furniture]{
			key: "furniture", doc: "Solid things that stand in the scene.", example: "{desk: {table: [1.6, 0.8, 0.75], at: [2.9, 2.6]}}",
			table: furnitureTable, at: func(s *Scene) *[]Furniture { return &s.Furniture }, check: checkFurniture,
		},
		section[Scene, Person, *Person]{
			key: "people", doc: "Who is in the scene.", example: "{ruth: {at: [1.2, 2.0], pose: seated}}",
			table: personTable, at: func(s *Scene) *[]Person { return &s.People }, check: checkPerson,
		},
		section[Scene, Camera, *Camera]{
			key: "cameras", doc: "The cameras.", example: "{A: {at: [3.3, 0.5], lens: 32 mm}}",
			table: cameraTable, at: func(s *Scene) *[]Camera { return &s.Cameras }, check: checkCamera,
		},
		section[Scene, Light, *Light]{
			key: "lights", doc: "The lights.", example: "{day: {unit: led-point-600-bicolour, at: {opening: street, out: 2.4}}}",
			table: lightTable, at: func(s *Scene) *[]Light { return &s.Lights },
		},
		section[Scene, Grip, *Grip]{
			key: "grip", doc: "Flags, cards, frames, nets, silver boards.", example: "{black: {flag: [1.2, 1.2], at: [2.0, 1.0]}}",
			table: gripTable, at: func(s *Scene) *[]Grip { return &s.Grip },
		},
		section[Scene, Meter, *Meter]{
			key: "meters", doc: "Named readings.", example: "{desk-top: {flat: [2.9, 2.5, 0.76], facing: up}}",
			table: meterTable, at: func(s *Scene) *[]Meter { return &s.Meters }, check: checkMeter,
		},
	}
}

// changeable are the sections that a set-up may change thing by thing.
func changeable() []part { return append(parts(), cueList()) }
