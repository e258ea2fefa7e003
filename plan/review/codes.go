package review

// The codes of what a review finds beyond the faults of reading and resolving. All are warnings
// or notes: a scene that is lit badly is still a scene.
const (
	CodeKeyUnder        = "key-under"       // warning: a key side well under the working stop
	CodeKeyOver         = "key-over"        // warning: a key side well over the working stop
	CodeNoLight         = "no-light"        // warning: a light at no level, or one that reaches no reading
	CodeKeyNotBrightest = "key-beaten"      // warning: the lights with the role of key make the darker side of a face
	CodeRoleEffect      = "role-effect"     // warning: a light that does not do what its role says
	CodeColourGap       = "colour-gap"      // note: key and fill sides of clearly different colour
	CodeStandShort      = "stand-short"     // warning: a light higher than its stand goes
	CodeStandTall       = "stand-tall"      // warning: a light lower than its stand goes
	CodeStandHeavy      = "stand-heavy"     // warning: a head heavier than its stand carries
	CodeStandSpigot     = "stand-spigot"    // warning: a head whose spigot its stand does not take
	CodeWalkLeaves      = "walk-leaves"     // note: a walk that leaves the working stop
	CodeInFrame         = "in-frame"        // warning: equipment that a camera sees
	CodeInMargin        = "in-margin"       // note: equipment in the margin about a camera's frame
	CodeFrameClear      = "frame-clear"     // note: what comes nearest to a frame that nothing shows in
	CodeSeenBright      = "seen-bright"     // note: how bright a lamp looks that is meant to be in the picture
	CodeSeenNowhere     = "seen-nowhere"    // note: a light that is meant to be in the picture, and is in none
	CodeReflected       = "reflected"       // warning: equipment that a camera sees in a mirror
	CodeInGlass         = "in-glass"        // warning: a lamp, or what light falls on, that a camera sees in glass; info where nobody knows what is behind
	CodeFlare           = "flare"           // warning: a lamp that shines onto a lens; a note where an eyebrow shades it
	CodeFlicker         = "flicker"         // warning: a lamp on mains that pulses in a picture
	CodeLineCrossed     = "line-crossed"    // warning: a camera on the other side of the line of action than those before it
	CodeLineTrack       = "line-track"      // note: a track that crosses the line of action
	CodeOnLine          = "on-line"         // note: a camera on the line of action
	CodeOverload        = "overload"        // warning: a circuit that carries more than it may
	CodeFeedOver        = "feed-over"       // warning: a generator or a battery that has to give more than it can
	CodeNeutral         = "neutral"         // warning: three phases whose harmonics overload the neutral, or a cable for it
	CodeUneven          = "uneven-phases"   // note: three phases that differ by much; warning: those of a generator
	CodeRunsOut         = "runs-out"        // warning: a battery or a tank that does not last as long as is shot; note: as a day, where nothing says how long
	CodeLeakage         = "leakage"         // warning: more current down the earth than a residual-current device should stand
	CodeDimmer          = "dimmer"          // warning: a light that its dimmer does not dim, or that has none; note: one that is too small or too large for those of the kit
	CodeLoadUnknown     = "load-unknown"    // note: a light on a circuit whose power nothing says
	CodeInrush          = "inrush"          // note: lights that a breaker may not hold as they are switched on
	CodeCableDrop       = "cable-drop"      // warning: a light that loses much of its voltage in its cable
	CodeCableAcross     = "cable-across"    // warning: a cable through a door, over a walk, a track or the way out; note: over a sill, over stairs, between floors
	CodeNoCable         = "no-cable"        // warning: a light that no cable reaches, or that none of the kit feeds
	CodeNoCircuit       = "no-circuit"      // note: a light on none of the circuits of its scene
	CodeSpotReads       = "spot-reads"      // warning or note: a spot meter that reads nothing, somebody, a door or cloth, or through glass
	CodeClipped         = "clipped"         // warning of a face, else note: brighter than what a camera says that it holds
	CodeSunk            = "sunk"            // warning of a face, else note: darker than that
	CodeAssumed         = "assumed"         // note: a default that decided a number
	CodeStandInColour   = "stand-in-colour" // warning: a light of another colour than what it stands for, or whose colour nothing says
	CodeStandInAngle    = "stand-in-angle"  // warning: a light that comes from elsewhere than what it stands for
)
