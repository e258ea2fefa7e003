package source

// The codes of the faults that this package finds. They are stable: scripts and editors may
// rely on them.
const (
	CodeTooLarge     = "too-large"       // more bytes than a scene may have
	CodeNotText      = "not-text"        // bad UTF-8, or control characters
	CodeTab          = "tab"             // a tab where indentation stands
	CodeTooDeep      = "too-deep"        // nested beyond any scene
	CodeAlias        = "alias"           // an alias that repeats too much, stands in itself, or has no anchor
	CodeMergeKey     = "merge-key"       // `<<`
	CodeSecond       = "second-document" // `---` after a scene
	CodeDuplicateKey = "duplicate-key"   // one key twice in a map
	CodeBadKey       = "bad-key"         // a key that is a list, a map or nothing
	CodeEmpty        = "empty"           // a file without a scene
	CodeNotMap       = "not-a-map"       // a scene that is a list or a single value
	CodeTag          = "tag"             // `!!str`
	CodeSyntax       = "syntax"          // whatever else is not YAML

	CodeUnknownKey  = "unknown-key"
	CodeMissingKey  = "missing-key"
	CodeEmptyValue  = "empty-value"
	CodeNoForm      = "no-form"          // none of the keys that say what a thing is
	CodeTwoForms    = "two-forms"        // two of them
	CodeLater       = "not-computed-yet" // read and checked, and then not used
	CodeWrongType   = "wrong-type"       // a list where a number belongs
	CodeBadValue    = "bad-value"        // a value that cannot be read as its kind
	CodeNotFinite   = "not-finite"       // NaN or an infinity
	CodeOutOfRange  = "out-of-range"     // a number beyond its limits
	CodeUnknownWord = "unknown-word"     // none of the words that a key takes

	CodeUnknownName = "unknown-name" // a change to, or a strike of, what is not there
	CodeFixed       = "fixed"        // a change to what a set-up may not alter
	CodeBadChange   = "bad-change"   // a change that says two things at once
)
