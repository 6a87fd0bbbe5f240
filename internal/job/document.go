package job

import (
	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/typed"
)

// Format is the number of the document's form that this program writes and reads.
const Format = "1"

// Document is a piece as typed. Only name, box, shell and basin must be given;
// everything else has a default that the plan lists as assumed.
type Document struct {
	// Form of the document: 1.
	Pourwright typed.Choice `yaml:"pourwright,omitempty"`
	// Name of the piece.
	Name typed.Text `yaml:"name"`
	// The maker's own mark of this state of the piece.
	Version typed.Text `yaml:"version,omitempty"`
	// For whom.
	Client typed.Text `yaml:"client,omitempty"`
	// Anything worth remembering.
	Notes typed.Text `yaml:"notes,omitempty"`
	// Units of bare lengths: mm or in. Default mm.
	Units typed.Choice `yaml:"units,omitempty"`
	// Outer box of the finished piece.
	Box BoxText `yaml:"box"`
	// The concrete shell.
	Shell ShellText `yaml:"shell"`
	// The hollow that resin fills.
	Basin BasinText `yaml:"basin"`
	// The knockout's sheet.
	Foam FoamText `yaml:"foam,omitempty"`
	// How the knockout's parts are cut and joined.
	Knockout KnockoutText `yaml:"knockout,omitempty"`
	// The panel form.
	Form FormText `yaml:"form,omitempty"`
	// How concrete is mixed here.
	Concrete ConcreteText `yaml:"concrete,omitempty"`
	// How resin is poured here.
	Resin ResinText `yaml:"resin,omitempty"`
	// The room.
	Room RoomText `yaml:"room,omitempty"`
	// Name of the machine on the shelf. Default hand saw.
	Machine typed.Text `yaml:"machine,omitempty"`
	// When somebody is there.
	Shop ShopText `yaml:"shop,omitempty"`
	// Boards and bars that are owned.
	Stock []StockText `yaml:"stock,omitempty"`
	// The inset base; without it none is planned.
	Base *BaseText `yaml:"base,omitempty"`
	// Cross supports delivered with the piece.
	Supports []ExtraText `yaml:"supports,omitempty"`
	// Other things delivered with the piece.
	Extras []ExtraText `yaml:"extras,omitempty"`
	// Cards for this piece alone: new ones, or changes to cards of the shelf.
	Materials *material.File `yaml:"materials,omitempty"`

	file   string
	places typed.Places
}

// BoxText is the outer box as typed.
type BoxText struct {
	// The longer horizontal side.
	Length typed.Length `yaml:"length"`
	// The shorter horizontal side.
	Width typed.Length `yaml:"width"`
	// From foot to show face.
	Height typed.Length `yaml:"height"`
	// Corners of a convex outline in order, each [x, y] from the near left corner of the box in FINISHED VIEW. Default the rectangle.
	Outline []typed.List `yaml:"outline,omitempty"`
}

// ShellText is the shell as typed.
type ShellText struct {
	// Thickness of all coats together. Without coats: a face coat of 4 mm and backers of at most 13 mm.
	Thickness typed.Length `yaml:"thickness,omitempty"`
	// The coats from the mould outwards.
	Coats []CoatText `yaml:"coats,omitempty"`
	// Parts of the shell of another thickness.
	Zones []ZoneText `yaml:"zones,omitempty"`
}

// CoatText is a coat as typed.
type CoatText struct {
	// Name of the coat. Default face, backer 1, backer 2 and so on.
	Name typed.Text `yaml:"name,omitempty"`
	// Its thickness.
	Thickness typed.Length `yaml:"thickness"`
	// Name of its mix on the shelf. Default face mix for the first coat, backer for the others.
	Mix typed.Text `yaml:"mix,omitempty"`
}

// BasinText is the basin as typed.
type BasinText struct {
	// SVG file of outlines, beside the document.
	Drawing typed.Text `yaml:"drawing,omitempty"`
	// PNG or text file of heights, beside the document; in place of a drawing.
	HeightMap typed.Text `yaml:"height_map,omitempty"`
	// Where the drawing lies: page (its page is the box; default), centre, or [x, y] of its lower left corner.
	Place typed.List `yaml:"place,omitempty"`
	// User units per inch of a drawing without units. Default 96.
	Resolution typed.Number `yaml:"resolution,omitempty"`
	// How far a flattened curve may leave the true one. Default 0.05 mm.
	ChordError typed.Length `yaml:"chord_error,omitempty"`
	// The steps of depth from the show face down.
	Steps []StepText `yaml:"steps,omitempty"`
	// Size of a height map.
	Map MapText `yaml:"map,omitempty"`
	// Outlines of a height map smaller than this are dropped. Default 1 cm2.
	Speck typed.Area `yaml:"speck,omitempty"`
	// Radius to which the outlines of a height map are smoothed. Default 3 mm.
	Smooth typed.Length `yaml:"smooth,omitempty"`
}

// StepText is a step of the basin as typed.
type StepText struct {
	// Name of the step. Default its outline.
	Name typed.Text `yaml:"name,omitempty"`
	// Ids, ids of groups or .classes in the drawing.
	Outline typed.List `yaml:"outline,omitempty"`
	// Outlines left standing in this step.
	Islands typed.List `yaml:"islands,omitempty"`
	// Thickness of the step, or foam: one sheet as measured. Default foam.
	Depth typed.Length `yaml:"depth,omitempty"`
}

// MapText is the size of a height map as typed.
type MapText struct {
	// Length of the map on the piece. Default what a text grid states, the box's for a picture.
	Length typed.Length `yaml:"length,omitempty"`
	// Width of the map on the piece. Default as for the length, in proportion where only that is given.
	Width typed.Length `yaml:"width,omitempty"`
	// Depth that black stands for in a picture. Of a text grid: the depth its deepest value is scaled to; default its own.
	Depth typed.Length `yaml:"depth,omitempty"`
}

// FoamText is the foam as typed.
type FoamText struct {
	// Name of the foam on the shelf. Default EPS 25.
	Material typed.Text `yaml:"material,omitempty"`
	// Thickness by caliper.
	Measured typed.Length `yaml:"measured,omitempty"`
	// Thickness on the label, where it is not the card's.
	Nominal typed.Length `yaml:"nominal,omitempty"`
	// Size of a sheet, where it is not the card's.
	Sheet SheetText `yaml:"sheet,omitempty"`
	// Pieces left from earlier work, used before new sheets.
	Offcuts []OffcutText `yaml:"offcuts,omitempty"`
}

// SheetText is a sheet's size as typed.
type SheetText struct {
	// Longer side.
	Length typed.Length `yaml:"length,omitempty"`
	// Shorter side.
	Width typed.Length `yaml:"width,omitempty"`
}

// FormText is the form as typed.
type FormText struct {
	// Name of the board on the shelf. Default faced particleboard 18.
	Board typed.Text `yaml:"board,omitempty"`
	// Thickness by caliper.
	Measured typed.Length `yaml:"measured,omitempty"`
	// Size of a sheet, where it is not the card's.
	Sheet SheetText `yaml:"sheet,omitempty"`
	// Width of the saw's cut. Default 3.2 mm.
	Kerf typed.Length `yaml:"kerf,omitempty"`
	// Cut off every edge of a sheet. Default 10 mm.
	Trim typed.Length `yaml:"trim,omitempty"`
	// Corner joint: butt (default) or mitre.
	Corner typed.Choice `yaml:"corner,omitempty"`
	// Which pair runs past the other in a butt joint: long (default) or short.
	ButtOrder typed.Choice `yaml:"butt_order,omitempty"`
	// Where the sides stand: outside the base and cover its edge (default), or on the base.
	Sides typed.Choice `yaml:"sides,omitempty"`
	// How the mix presses on the walls: packed by hand (default) or flowable.
	Mix typed.Choice `yaml:"mix,omitempty"`
	// Most that a wall may bow. Default 1 mm.
	Bow typed.Length `yaml:"bow,omitempty"`
	// Radius of the caulk in the corners. Default 5 mm.
	Bead typed.Length `yaml:"bead,omitempty"`
	// Name of the screw on the shelf. Default screw 5 x 50.
	Screw typed.Text `yaml:"screw,omitempty"`
	// How far the saw's blade tilts. Default 45 degrees.
	Tilt typed.Number `yaml:"tilt,omitempty"`
	// Narrowest strip that can be held against the fence. Default 40 mm.
	Narrowest typed.Length `yaml:"narrowest,omitempty"`
	// Smallest offcut worth keeping. Default 300 x 100 mm.
	SmallestOffcut SheetText `yaml:"smallest_offcut,omitempty"`
	// Lumber on edge behind walls that would bow.
	Batten BattenText `yaml:"batten,omitempty"`
	// The boards that close mouths while resin is poured.
	Dam DamText `yaml:"dam,omitempty"`
	// Threaded inserts, cable ways and seats cast into the shell.
	Inserts []InsertText `yaml:"inserts,omitempty"`
}

// ConcreteText is the mixing as typed.
type ConcreteText struct {
	// Full volume of the mixing tub. Default 20 l.
	Tub typed.Volume `yaml:"tub,omitempty"`
	// Share of the tub left empty. Default 30 %.
	Freeboard typed.Fraction `yaml:"freeboard,omitempty"`
	// Mix beyond what is computed, for patches and what sticks to the tub. Default 10 %.
	Spare typed.Fraction `yaml:"spare,omitempty"`
	// How many hands pack and lift. Default 1.
	People typed.Number `yaml:"people,omitempty"`
	// Most that the mixer takes at once. Default as the tub.
	Mixer typed.Mass `yaml:"mixer,omitempty"`
	// Square metres of a fibred coat that one person packs in an hour. Default 1.5.
	PackRate typed.Number `yaml:"pack_rate,omitempty"`
	// Smallest step of the scale. Default 1 g.
	ScaleStep typed.Mass `yaml:"scale_step,omitempty"`
	// Dry face mix kept back for patches. Default 1 kg.
	Patch typed.Mass `yaml:"patch,omitempty"`
	// Temperature of the mix. Default the room's.
	MixTemperature typed.Temperature `yaml:"mix_temperature,omitempty"`
	// Air over the work in km/h. Default 0.
	AirSpeed typed.Number `yaml:"air_speed,omitempty"`
	// Days planned for drying before resin. Default 10 d.
	Drying typed.Duration `yaml:"drying,omitempty"`
	// Surfaces that stay without sealer: face, wall.
	Unsealed typed.List `yaml:"unsealed,omitempty"`
	// Mesh inside the last coat.
	Scrim ScrimText `yaml:"scrim,omitempty"`
	// Strengths that steps of the work need.
	Strength StrengthText `yaml:"strength,omitempty"`
	// Strengths tested in this shop; they set the curves.
	Tests []TestText `yaml:"tests,omitempty"`
}

// ResinText is the resin as typed. Fields of the card given here stand in place of
// the card's own.
type ResinText struct {
	// Name of the resin on the shelf. Default deep pour 50 mm.
	Material typed.Text `yaml:"material,omitempty"`
	// Volume of the mixing bucket. Default 10 l.
	Bucket typed.Volume `yaml:"bucket,omitempty"`
	// Share of the bucket left empty for stirring. Default 40 %.
	Freeboard typed.Fraction `yaml:"freeboard,omitempty"`
	// Bought beyond need. Default 5 %.
	Reserve typed.Fraction `yaml:"reserve,omitempty"`
	// Poured above the rim level, to be sanded off. Default 1 mm.
	Overfill typed.Length `yaml:"overfill,omitempty"`
	// Resin left on wetted faces, as a depth. Default 0.3 mm.
	Film typed.Length `yaml:"film,omitempty"`
	// No lift ends this close above a terrace. Default 3 mm.
	TerraceGuard typed.Length `yaml:"terrace_guard,omitempty"`
	// Density of the mixed, cured resin.
	Density typed.Value `yaml:"density,omitempty"`
	// Density of part A.
	DensityA typed.Value `yaml:"density_a,omitempty"`
	// Density of part B.
	DensityB typed.Value `yaml:"density_b,omitempty"`
	// Parts of A to parts of B by volume, such as 2:1.
	Ratio typed.Value `yaml:"ratio,omitempty"`
	// Parts of A to parts of B by mass, such as 100:44.
	RatioMass typed.Value `yaml:"ratio_mass,omitempty"`
	// Least depth of one lift.
	MinDepth typed.Value `yaml:"min_depth,omitempty"`
	// Greatest depth of one lift.
	MaxDepth typed.Value `yaml:"max_depth,omitempty"`
	// Pot life of 100 g at 25 C.
	PotLife typed.Value `yaml:"pot_life,omitempty"`
	// Shrinkage by volume.
	Shrinkage typed.Value `yaml:"shrinkage,omitempty"`
	// How long the next lift still bonds.
	Recoat typed.Value `yaml:"recoat,omitempty"`
	// Volume of the vacuum pot. Without it nothing is degassed.
	DegasPot typed.Volume `yaml:"degas_pot,omitempty"`
	// What the pump reaches, inHg below the atmosphere. Default 28.
	Vacuum typed.Number `yaml:"vacuum,omitempty"`
	// How far the piece stands out of level along its length, mm per metre.
	Level typed.Number `yaml:"level,omitempty"`
	// A colour seen on a sample. Without it the resin is clear.
	Tint TintText `yaml:"tint,omitempty"`
	// The maker's own lifts, first poured first. Without them the planner chooses.
	Lifts []LiftText `yaml:"lifts,omitempty"`
	// Whether the knockout's foam is left under the shell while pouring: removed or left. Default removed.
	Foam typed.Choice `yaml:"foam,omitempty"`
	// Peak temperature that no lift may pass. Default 60 C.
	PeakLimit typed.Temperature `yaml:"peak_limit,omitempty"`
	// Temperature of the resin as it is poured. Default the room's.
	PouredAt typed.Temperature `yaml:"poured_at,omitempty"`
	// Other resins on the shelf that would do: their best lifts are shown beside the chosen ones.
	Others typed.List `yaml:"others,omitempty"`
}

// RoomText is the room as typed.
type RoomText struct {
	// Air temperature. Default 20 C.
	Temperature typed.Temperature `yaml:"temperature,omitempty"`
	// Relative humidity.
	Humidity typed.Fraction `yaml:"humidity,omitempty"`
	// Temperature at night, where the room cools.
	Night typed.Temperature `yaml:"night,omitempty"`
	// How long the day's temperature holds, when night is stated. Default 12 h.
	DayHours typed.Duration `yaml:"day_hours,omitempty"`
	// Temperatures one after the other, from the first coat on.
	History []StretchText `yaml:"history,omitempty"`
	// CSV file of logged temperatures, beside the document: hours or time, then C or F.
	Log typed.Text `yaml:"log,omitempty"`
}

// ExtraText is a thing delivered with the piece, as typed.
type ExtraText struct {
	// What it is.
	Name typed.Text `yaml:"name"`
	// Mass of all of them; not needed for a tube with a length.
	Mass typed.Mass `yaml:"mass,omitempty"`
	// Name of the tube on the shelf.
	Tube typed.Text `yaml:"tube,omitempty"`
	// Length of one.
	Length typed.Length `yaml:"length,omitempty"`
	// How many. Default 1.
	Count typed.Number `yaml:"count,omitempty"`
	// Bolts of a tube: M6, M8 (default), M10 or M12.
	Bolt typed.Choice `yaml:"bolt,omitempty"`
	// Distance of the bolt holes from the ends. Default over the base's sides, else 40 mm.
	FromEnd typed.Length `yaml:"from_end,omitempty"`
	// Where tubes lie along the length, from the left end in FINISHED VIEW. Default evenly.
	At typed.List `yaml:"at,omitempty"`
}

// Read takes the document apart; it decides nothing yet. The document is nil when
// the file is not a document at all; every other fault leaves its field empty. The
// findings say each fault with line, column, field and remedy.
func Read(name string, data []byte) (*Document, []finding.Finding) {
	d := &Document{file: name}
	places, found, ok := typed.Decode(name, data, d)
	if !ok {
		return nil, found
	}
	d.places = places
	return d, found
}

// YAML writes the document as it was typed, fields in the order of the struct.
func (d *Document) YAML() []byte { return typed.Encode(d) }

// Places tells where every field stands in the file it was read from.
func (d *Document) Places() map[string]finding.Where { return d.places }
