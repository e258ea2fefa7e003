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
	CodeStandInColour   = "stand-in-colour" // warning: a light of another colour than what it stands for, or whose colour nothing says
	CodeStandInAngle    = "stand-in-angle"  // warning: a light that comes from elsewhere than what it stands for
	CodeAssumed         = "assumed"         // note: a default that decided a number
)
