package resolve

// The codes of the faults that resolving a scene can find, beside those of packages source and
// scene. They are stable: scripts and editors may rely on them. Errors unless said otherwise.
const (
	CodeCycle     = "cycle"      // places that wait for each other
	CodeSamePlace = "same-place" // no direction between two things that stand in one place

	CodeOutlineOff     = "outline-off"     // info: a closing error small enough to share out
	CodeOutlineOpen    = "outline-open"    // an outline that does not close
	CodeOutlineCorners = "outline-corners" // too few corners, or too many
	CodeOutlineCrosses = "outline-crosses" // an outline that crosses or touches itself
	CodeWallLength     = "wall-length"     // a wall without length
	CodeRoomSmall      = "room-small"      // a room without a floor
	CodeRoomLarge      = "room-large"      // warning: a wall as long as no stage has
	CodeRoomsOverlap   = "rooms-overlap"   // interiors that share space
	CodeRoomsTouch     = "rooms-touch"     // warning: no wall between two rooms

	CodeNoSuchWall      = "no-such-wall"
	CodeOpeningWide     = "opening-wide"      // wider than its wall
	CodeOpeningBeyond   = "opening-beyond"    // beyond an end of its wall
	CodeSillBelowFloor  = "sill-below-floor"  // where no wall is
	CodeHeadOverCeiling = "head-over-ceiling" // where no wall is
	CodeOpeningsOverlap = "openings-overlap"  // two holes in one place
	CodeOpeningTwice    = "opening-twice"     // the same hole from both sides of a wall
	CodeAlongBeyond     = "along-beyond"      // a place beyond an end of its wall
	CodeNotOnTop        = "not-on-top"        // warning: beside what it stands on
	CodeBoomShort       = "boom-short"        // a boom that does not reach from its base to the lamp
	CodeBoomNowhere     = "boom-nowhere"      // warning: a boom whose base has no room anywhere
	CodeNoAim           = "no-aim"            // an aim at the very place it starts from
	CodeNeedsHeight     = "needs-height"      // a place to aim at without a height
	CodeNoVoltage       = "no-voltage"        // warning: a circuit of direct current whose volts nothing says
	CodePhase           = "phase"             // phases of a circuit that do not go with what feeds it, and a light on three of them
	CodeTagTwice        = "tag-twice"         // warning: two lights with one tag
	CodeNoCatalogue     = "no-catalogue"      // a name of the kit where no catalogue was given
	CodeMeterConstant   = "meter-constant"    // a second meter constant in a file
	CodeRoomNarrow      = "room-narrow"       // warning: a room that nobody can stand in
	CodeShutterLong     = "shutter-long"      // an exposure longer than the frame
	CodeFilter          = "filter"            // what is no filter before a lens, or a conversion that leaves no white
	CodePlay            = "play"              // a light that plays below its lowest level
	CodeTilt            = "lamp-tilt"         // note: a measured lamp whose light by its tilt is not known as it hangs
	CodeCurtainWide     = "curtain-wide"      // a curtain wider than its opening, a slat wider than it is high
	CodeCurtainHigh     = "curtain-high"      // a curtain over the ceiling, or of no height
	CodeGelWithoutGlass = "gel-without-glass" // gels on an opening that has no glass
	CodeNothingBefore   = "nothing-before"    // stays in a set-up with none before it
	CodeStaysMoved      = "stays-moved"       // a thing that stays and is moved at once
	CodeNoGate          = "no-gate"           // cuts or a breakup in a head that throws no image
	CodeNotBefore       = "not-before"        // a cut that ends at what is not before its lamp
	CodeCutAway         = "cut-away"          // cuts that take all of the light
	CodeCutIdle         = "cut-idle"          // warning: a cut that takes none
	CodeTwoShades       = "two-shades"        // a shade and another modifier on one lamp
	CodeMirrorTurned    = "mirror-turned"     // a mirror that faces the wall it hangs on
	CodeNoMirror        = "no-mirror"         // a mirror of what does not mirror
	CodeNoWalk          = "no-walk"           // a walk all of whose places are one
	CodeStandIn         = "stand-in"          // a light that passes for itself; warning: for what gives no light now
	CodeLineOne         = "line-one"          // a line of action with the same person at both ends, or one and a mark of theirs
	CodeNoTrack         = "no-track"          // a track all of whose places are one
	CodeTrackStart      = "track-start"       // a track that starts elsewhere than its camera stands
	CodeTrackLong       = "track-long"        // a track that is longer than is looked along
	CodeWalkLong        = "walk-long"         // a walk that is longer than is read
)
