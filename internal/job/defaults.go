package job

import "pourwright/internal/units"

// Chosen: what a document that says nothing gets. Each is usual in a small shop and
// stands in the documentation of its field.
const (
	defaultShell      units.Length = 19
	defaultFace       units.Length = 4  // Source: [gfrc-guides] 3-5 mm
	mostBacker        units.Length = 13 // Source: [gfrc-guides] 6-13 mm a coat
	defaultFaceMix                 = "face mix"
	defaultBacker                  = "backer"
	defaultFoam                    = "EPS 25"
	defaultBoard                   = "faced particleboard 18"
	defaultResin                   = "deep pour 50 mm"
	defaultMachine                 = "hand saw"
	defaultLiner                   = "polypropylene packing tape"
	defaultKerf       units.Length = 3.2
	defaultTrim       units.Length = 10
	defaultChord      units.Length = 0.05
	defaultSpeck      units.Area   = 100
	defaultSmooth     units.Length = 3
	defaultResolution              = 96 // user units per inch. Source: CSS, where 1 in is 96 px

	defaultTub          units.Volume   = 20
	defaultTubFreeboard units.Fraction = 0.30
	defaultSpare        units.Fraction = 0.10
	defaultPeople                      = 1

	defaultBucket          units.Volume      = 10
	defaultBucketFreeboard units.Fraction    = 0.40 // Source: [practice] 30-50 %
	defaultReserve         units.Fraction    = 0.05
	defaultOverfill        units.Length      = 1
	defaultFilm            units.Length      = 0.3
	defaultGuard           units.Length      = 3
	defaultVacuum                            = 28.0 // inHg, a small rotary pump. Common practice, no source
	defaultSample          units.Length      = 25
	defaultTintShare       units.Fraction    = 0.005
	defaultPeak            units.Temperature = 60 // Source: [practice], from memory: over it resin yellows and stresses

	defaultRoom units.Temperature = 20
)

// Checks of agreement.
const (
	coatTolerance = units.Length(0.1) // between the sum of coats and the stated shell
	mostLifts     = 8                 // Chosen: more lifts than this ask for another resin
)
