// Package typed reads YAML as it was typed: every scalar stays text, every field
// keeps its line and column, and all that is wrong is said at once.
//
// Documents are plain: one mapping, without anchors, aliases, tags, merges or a
// second document, of limited size and depth, so that a small file can never
// become a large one. Numbers are not interpreted here; 012, 1e3 and .nan are left
// to package units, which reads or refuses them as a person would.
package typed

// The kinds of text a field may hold. Each says what its text is read as.
type (
	Text        string // words
	Choice      string // one of a few words
	Number      string // a number without a unit
	Ratio       string // 2:1
	Length      string // 34.9 mm, 1 3/8 in, 3' 4 1/2"
	Area        string // 12 mm2, 1 cm2
	Volume      string // 5 l, 1.5 US gal
	Mass        string // 2.5 kg, 17 lb 8 oz
	Temperature string // 20 C, 68 F
	Duration    string // 45 min, 6 h, 3 d
	Density     string // 1100 kg/m3
	Speed       string // 1500 mm/min
	Fraction    string // 5 %, 0.05
	Date        string // 2027-03-01
	List        []string
)

// Value is a quantity with its pedigree. A bare scalar is a value alone.
type Value struct {
	// The value with its unit.
	Value Text `yaml:"value,scalar"`
	// Usual range: two values with their units.
	Range List `yaml:"range,omitempty"`
	// How the value came to be known: measured, data sheet or typical.
	Origin Choice `yaml:"origin,omitempty"`
	// Key of the register of sources.
	Source Text `yaml:"source,omitempty"`
}

// Limits of one file.
const (
	MaxBytes  = 1 << 20
	MaxDepth  = 24
	MaxFields = 8000 // colons, commas and dashes: what the parser's time grows with
)
