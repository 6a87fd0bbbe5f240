// Package material is the shelf: generic cards of what a shop buys and owns. Every
// value carries its unit, range, origin and source; no card names a brand.
package material

import "pourwright/internal/units"

// An Origin says how a value came to be known.
type Origin string

// The origins, best first.
const (
	Measured  Origin = "measured"   // the maker measured it
	DataSheet Origin = "data sheet" // the supplier states it
	Typical   Origin = "typical"    // usual for the class; looks assumed wherever it is shown
)

// A Value is a number with its pedigree.
type Value[Q ~float64] struct {
	Value  Q      `json:"value"`
	Low    Q      `json:"low,omitempty"` // usual range; 0, 0 when none is stated
	High   Q      `json:"high,omitempty"`
	Origin Origin `json:"origin"`
	Source string `json:"source,omitempty"` // key in package source
	Typed  string `json:"typed,omitempty"`  // what the maker typed, if they did
}

// Known reports whether v was given at all.
func (v Value[Q]) Known() bool { return v.Origin != "" }

// Resin is the card of a casting resin of two parts.
type Resin struct {
	Name      string
	Class     string               // what it is for, in words
	Density   Value[units.Density] // mixed and cured
	DensityA  Value[units.Density] // part A, resin
	DensityB  Value[units.Density] // part B, hardener
	RatioA    Value[float64]       // parts of A by volume for RatioB parts of B
	RatioB    Value[float64]
	ByMass    bool                     // the stated ratio is by mass, not volume
	MinDepth  Value[units.Length]      // of one lift
	MaxDepth  Value[units.Length]      // of one lift
	PotLife   Value[units.Duration]    // 100 g at 25 C
	Gel       Value[units.Duration]    // 100 g at 25 C
	Recoat    Value[units.Duration]    // film at 22 C: next lift bonds until then
	Hard      Value[units.Duration]    // film at 22 C
	Shrinkage Value[units.Fraction]    // by volume
	Heat      Value[float64]           // heat of reaction, kJ/kg
	Tg1       Value[units.Temperature] // fully cured glass transition
	K25       Value[float64]           // rate constant at 25 C, 1/s

	RateRatio  Value[float64] // of the uncatalysed to the self-catalysed rate; 0 takes 0.2
	Activation Value[float64] // kJ/mol; 0 takes 55

	Packages []Package
}

// MixKind says how a concrete mix is made up.
type MixKind string

// The kinds of mix.
const (
	Bagged  MixKind = "bagged"  // dry blend with a range of water
	Scratch MixKind = "scratch" // every part weighed
)

// Ingredient is one part of a concrete mix.
type Ingredient struct {
	Name   string
	Role   string                // cement, pozzolan, sand, water, polymer, plasticiser, pigment, fibre, blend
	Parts  Value[float64]        // by mass, relative to the other parts
	SG     Value[float64]        // specific gravity
	Solids Value[units.Fraction] // of an emulsion or admixture; the rest is water and counts in w/cm

	Moisture Value[units.Fraction] // of damp sand, on its dry mass; this water counts in w/cm and is not added
	Share    Value[units.Fraction] // of fibre, in place of parts; 0: parts count
	Basis    string                // what Share is of: total, rest (all but the fibre), cement (and pozzolan)
}

// Mix is the card of a concrete mix for a face or a backer coat.
type Mix struct {
	Name        string
	Use         string // face, backer, any
	Kind        MixKind
	Ingredients []Ingredient
	Air         Value[units.Fraction]
	WaterMin    Value[float64]       // kg water per kg dry blend (bagged) or w/cm (scratch)
	WaterMax    Value[float64]       // the never-above limit
	WetDensity  Value[units.Density] // 0 when it follows from absolute volumes
	Cured       Value[units.Density]
	WorkingLife Value[units.Duration] // at 20 C
	NextCoat    Value[units.Duration] // face to backer, coat to coat, at 20 C: earliest
	NextCoatEnd Value[units.Duration] // latest
	Demould     Value[units.Duration] // at 20 C, earliest
	Packages    []Package             // of the dry blend, or of the cement

	EdgeFrom   Value[units.Duration]    // edge levelling after the last coat, at 20 C: earliest
	EdgeUntil  Value[units.Duration]    // latest
	Cover      Value[units.Duration]    // under film, at 20 C
	MixTime    Value[units.Duration]    // before the fibre
	FibreTime  Value[units.Duration]    // with the fibre, at low speed
	Flow       Value[units.Length]      // spread of the flow ring
	Strength   Value[float64]           // compressive, at 28 days, MPa
	Cement     string                   // class of hardening: R rapid, N normal, S slow
	Activation Value[float64]           // Arrhenius temperature of setting, K
	Datum      Value[units.Temperature] // of Nurse-Saul
}

// Board is a form or carcass board.
type Board struct {
	Name      string
	Thickness Value[units.Length] // nominal
	Length    Value[units.Length] // of a sheet
	Width     Value[units.Length]
	Density   Value[units.Density]
	Modulus   Value[float64]           // in bending, MPa
	Gravity   Value[float64]           // specific gravity that screws hold by; the density over 1000 where not known
	Edge      Value[units.Fraction]    // share of a screw's hold that the edge has
	Service   Value[units.Temperature] // most that its face and edge bear from warm resin
	Packages  []Package
}

// Screw is a wood screw.
type Screw struct {
	Name     string
	Diameter Value[units.Length] // of the thread
	Length   Value[units.Length]
	Packages []Package
}

// Foam is a sheet of knockout foam.
type Foam struct {
	Name      string
	Thickness Value[units.Length] // nominal
	Length    Value[units.Length]
	Width     Value[units.Length]
	Density   Value[units.Density]
	Service   Value[units.Temperature] // highest in long use
	Packages  []Package
}

// Consumable is a sealer, adhesive, caulk, release or tape.
type Consumable struct {
	Name     string
	Role     string                   // sealer, adhesive, caulk, release, wax, tape
	Coverage Value[float64]           // m2 per litre, m per cartridge for caulk, m per roll for tape
	Service  Value[units.Temperature] // most that it bears from warm resin; not known for all
	Packages []Package
}

// Tube is a square steel tube for cross supports.
type Tube struct {
	Name     string
	Side     Value[units.Length]
	Wall     Value[units.Length]
	MassPerM Value[float64]      // kg/m
	Bar      Value[units.Length] // length sold
	Packages []Package
}

// Machine is a router or saw and what it can reach.
type Machine struct {
	Name     string
	BedX     Value[units.Length]
	BedY     Value[units.Length]
	Cutter   Value[units.Length] // diameter
	Flute    Value[units.Length]
	Feed     Value[units.Speed]
	Plunge   Value[units.Speed]
	PassDown Value[units.Length]

	MaxFeed      Value[units.Speed]
	Rapid        Value[units.Speed]
	SafeHeight   Value[units.Length] // above the sheet
	Overcut      Value[units.Length] // into the board below the sheet
	Acceleration Value[float64]      // mm/s2
	ArcTolerance Value[units.Length]
	RampAngle    Value[units.Angle]
	Tabs         Value[float64] // on each outline
	TabWidth     Value[units.Length]
	TabHeight    Value[units.Length]
	SpindleRPM   Value[float64]
	Spindle      string              // yes or no; "" is no
	Units        string              // of programs: mm or in; "" is mm
	Direction    string              // climb or conventional; "" is climb
	Ball         Value[units.Length] // diameter of the ball cutter
	Scallop      Value[units.Length]
}

// Router reports whether m is moved by programs: its card states a bed, a cutter or a
// feed, which a hand saw has not.
func (m Machine) Router() bool {
	return m.BedX.Known() || m.BedY.Known() || m.Cutter.Known() || m.Feed.Known()
}

// Package is a size that can be bought.
type Package struct {
	Quantity Value[float64] // in Unit
	Unit     string         // l, kg, sheet, bar, cartridge
	Price    Value[float64] // in the shop's currency; 0 when not stated
}

// Shelf holds all cards by name.
type Shelf struct {
	Resins      map[string]Resin
	Mixes       map[string]Mix
	Boards      map[string]Board
	Foams       map[string]Foam
	Consumables map[string]Consumable
	Tubes       map[string]Tube
	Machines    map[string]Machine
	Screws      map[string]Screw
}
