package fit

// The codes of what does not fit. Errors unless said otherwise.
const (
	CodeOverCeiling      = "over-ceiling"       // warning of furniture; error of a lamp, a lens, grip
	CodeInSolid          = "in-solid"           // a lens or a face inside a solid, a camera that has a wall where any body would be; warning of a body, grip, what holds things, a long camera, a meter
	CodeStandTight       = "stand-tight"        // warning: legs that reach into a wall or furniture; note: those of a camera
	CodeLightInSolid     = "light-in-solid"     // a lamp inside a solid; warning of one that reaches into it
	CodeBelowFloor       = "below-floor"        // a lamp, a lens or grip under the floor or the ground
	CodeAxisMisses       = "axis-misses"        // an axis that misses the opening it was placed by; a warning where some of the beam passes
	CodeNoOpeningReached = "no-opening-reached" // warning: a light outside that lights no room
	CodePlane            = "plane"              // a level plane that no room holds, or beside another map
	CodeOutside          = "outside"            // warning of a meter that no light can reach; info of a person, a camera
	CodeAllDark          = "all-dark"           // warning: a set-up without a light that is up
	CodeTooHot           = "too-hot"            // warning: a lamp that is too hot for what is on it
	CodeHeat             = "heat"               // warning: cloth or glass that a lamp heats too much
	CodeTwoMirrors       = "two-mirrors"        // info: a lamp before one of two mirrors that face each other
	CodeMains            = "wrong-mains"        // warning: a bulb or a supply made for other mains than its circuit's
	CodeCameraBlocked    = "camera-blocked"     // warning: a camera with a wall before everybody
	CodeWalkThrough      = "walk-through"       // warning: a walk that leads through a wall, furniture or somebody
	CodeWalkTight        = "walk-tight"         // info: a walk with no room for a shoulder; warning: with none for a body
	CodeTrackThrough     = "track-through"      // warning: a track that leads through furniture or somebody; an error where the lens goes through a wall
	CodeOnTrack          = "on-track"           // warning: a stand on a track, or equipment in the way of the camera on it
	CodeWalkTrack        = "walk-track"         // info: a walk that crosses a track, or leads so near by it that a camera is in the way
	CodeTrackUneven      = "track-uneven"       // warning: a floor that changes its level under a track
	CodeCameraTurned     = "camera-turned"      // a camera with everybody behind it; a warning where it is pointed at a place in space, or may yet show them from elsewhere on its track, or in a mirror
	CodeCueOrder         = "cue-order"          // a cue at a time before that of one that is written before it
	CodeCueOverlap       = "cue-overlap"        // warning: a cue that goes before the one before it is over
	CodeCueLacks         = "cue-lacks"          // warning: a cue of a light that this set-up has not
	CodeCueEmpty         = "cue-empty"          // warning: a cue that changes nothing
	CodeCueFade          = "cue-fade"           // warning: a fade of a light that cannot fade
	CodeCueSlow          = "cue-slow"           // warning: a cue that a large filament is too slow for
	CodeCueStrike        = "cue-strike"         // warning: a cue that strikes a discharge lamp
	CodeClash            = "clash"              // warning: equipment that lies in other equipment
	CodeHitsPerson       = "hits-person"        // warning: equipment that reaches into somebody, where they are or at a mark
	CodeInWalk           = "in-walk"            // warning: equipment in the way of a walk
	CodeInSwing          = "in-swing"           // info: equipment in the way of a leaf; warning: of the way out
	CodeOverPerson       = "over-person"        // info: equipment that hangs over somebody
	CodeBoomBalance      = "boom-balance"       // info: the counterweight of a boom
	CodeBoomLoad         = "boom-load"          // warning: a boom or its stand that does not carry what is on it
	CodePole             = "pole"               // info: the force of a pole on its walls; warning: one too long or too weak
	CodeLift             = "lift"               // warning: a lift that goes too low, or higher than there is room or than any of the kit goes with its lamp
	CodeOverEdge         = "over-edge"          // warning: a stand whose feet reach over the edge of what it stands on
	CodeWind             = "wind"               // info: the wind at which what stands outdoors comes down, or that no stand is named to tell it by; warning: less than a fresh breeze
	CodeHotNear          = "hot-near"           // warning: a hot head near what burns
	CodeEscape           = "escape"             // warning: a way out that is too narrow, or that nobody reaches
	CodeLensWide         = "lens-wide"          // warning: a lens that sees more than any does
)
