package scene

// The codes of the faults that loading a scene finds, beside those of package source. They are
// stable: scripts and editors may rely on them.
const (
	CodeMissingUnit  = "missing-unit"   // a bare number where a unit is needed
	CodeBadName      = "bad-name"       // a name that may not be given
	CodeTwice        = "duplicate-name" // one name for two things
	CodeWrongThing   = "wrong-thing"    // the name of something else than what is meant
	CodeUnknownEntry = "unknown-entry"  // a name that the catalogue does not hold
	CodeWrongKey     = "wrong-key"      // a known key that does not go with the others
	CodeWrongSide    = "wrong-side"     // camera-left without a camera, own-left without a person
	CodeContradicts  = "contradiction"  // two values that cannot both be meant: a sill above its head
	CodeTooMany      = "too-many"       // more things of one kind than a scene may hold
	CodeTooBright    = "too-bright"     // a reflectance that its colour does not allow
	CodeVersion      = "version"        // the language version is missing, or another
	CodeBadFile      = "bad-file"       // a file that is missing, unreadable or out of bounds
	CodeUnknownSetup = "unknown-setup"  // a set-up that the scene does not have
	CodeSetupCycle   = "setup-cycle"    // set-ups that wait for each other

	CodeChangesNothing = "changes-nothing" // a set-up that is as the one it starts from
	CodeCannotCross    = "cannot-cross"    // what a reverse leaves where it stands
)
