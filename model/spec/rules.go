package spec

// The rules Read holds a file to. Each stands for one kind of fault; the
// smallest file that breaks it stands in rules_test.go.
const (
	TooLarge       = "too-large"       // the file has more bytes than Largest
	NotText        = "not-text"        // the file is not UTF-8, or holds control characters
	EmptyFile      = "empty-file"      // nothing but spaces and comments
	NotYAML        = "not-yaml"        // the text is not YAML
	TabIndent      = "tab-indent"      // a line is indented with a tab, which YAML forbids
	TooDeep        = "too-deep"        // brackets or indents within one another without end
	SecondDocument = "second-document" // a model is one YAML document
	Alias          = "alias"           // anchors, aliases and merge keys are not read
	TypeTag        = "type-tag"        // YAML type tags (!!int) are not read
	UnknownKey     = "unknown-key"     // a key that means nothing where it stands
	KeyTwice       = "key-twice"       // a key written twice in one group
	MissingKey     = "missing-key"     // a key that cannot be left out
	NoValue        = "no-value"        // a key with nothing behind it, or null
	WrongKind      = "wrong-kind"      // a list, a group or a word where another of them is needed
	WrongCount     = "wrong-count"     // a list with too few or too many items
	BadSize        = "bad-size"        // text that is not a length
	BadNumber      = "bad-number"      // text that is not a whole number
	BadDate        = "bad-date"        // text that is not a day of the calendar
	BadText        = "bad-text"        // text that is empty, too long or not one plain line
	UnknownWord    = "unknown-word"    // a word that is not among those to choose from
	OutOfRange     = "out-of-range"    // a size or number outside its limits
	MoreFaults     = "more-faults"     // more faults than are worth listing
)
