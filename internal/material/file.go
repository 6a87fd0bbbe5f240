package material

import "pourwright/internal/typed"

// File is a shelf as typed. A card whose name is on the shelf already changes only
// the values it gives; a new card may start from another with "like".
type File struct {
	// Origin of every value of this file that states none: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of every value of this file that states none.
	Source typed.Text `yaml:"source,omitempty"`
	// Casting resins by name.
	Resins map[string]ResinCard `yaml:"resins,omitempty"`
	// Concrete mixes by name.
	Mixes map[string]MixCard `yaml:"mixes,omitempty"`
	// Form and carcass boards by name.
	Boards map[string]BoardCard `yaml:"boards,omitempty"`
	// Sheets of knockout foam by name.
	Foams map[string]FoamCard `yaml:"foams,omitempty"`
	// Sealers, adhesives, caulk, wax and release by name.
	Consumables map[string]ConsumableCard `yaml:"consumables,omitempty"`
	// Square steel tubes by name.
	Tubes map[string]TubeCard `yaml:"tubes,omitempty"`
	// Routers and saws by name.
	Machines map[string]MachineCard `yaml:"machines,omitempty"`
	// Wood screws by name.
	Screws map[string]ScrewCard `yaml:"screws,omitempty"`
}

// ResinCard is a casting resin as typed.
type ResinCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// What the resin is for, in words.
	Class typed.Text `yaml:"class,omitempty"`
	// Density of the mixed, cured resin.
	Density typed.Value `yaml:"density,omitempty"`
	// Density of part A, the resin.
	DensityA typed.Value `yaml:"density_a,omitempty"`
	// Density of part B, the hardener.
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
	// Gel time of 100 g at 25 C.
	Gel typed.Value `yaml:"gel,omitempty"`
	// How long the next lift still bonds, film at 22 C.
	Recoat typed.Value `yaml:"recoat,omitempty"`
	// When a film is hard at 22 C.
	Hard typed.Value `yaml:"hard,omitempty"`
	// Shrinkage by volume.
	Shrinkage typed.Value `yaml:"shrinkage,omitempty"`
	// Heat of reaction in kJ/kg.
	Heat typed.Value `yaml:"heat_kj_kg,omitempty"`
	// Glass transition when fully cured.
	Tg1 typed.Value `yaml:"glass_transition,omitempty"`
	// Rate constant at 25 C in 1/s.
	K25 typed.Value `yaml:"rate_25_per_s,omitempty"`
	// Ratio of the uncatalysed to the self-catalysed rate. Without it 0.2.
	RateRatio typed.Value `yaml:"rate_ratio,omitempty"`
	// Activation energy in kJ/mol. Without it 55.
	Activation typed.Value `yaml:"activation_kj_mol,omitempty"`
	// Sizes that can be bought, A and B together.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// MixCard is a concrete mix as typed.
type MixCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// What the mix is for: face, backer or any.
	Use typed.Choice `yaml:"use,omitempty"`
	// How it is made up: bagged or scratch.
	Kind typed.Choice `yaml:"kind,omitempty"`
	// The parts, by mass.
	Ingredients []IngredientCard `yaml:"ingredients,omitempty"`
	// Air in the mix, share of its volume.
	Air typed.Value `yaml:"air,omitempty"`
	// Least water: kg per kg of dry blend (bagged) or water to cement and pozzolan (scratch).
	WaterMin typed.Value `yaml:"water_min,omitempty"`
	// Most water, never to be exceeded; basis as water_min.
	WaterMax typed.Value `yaml:"water_max,omitempty"`
	// Density of the fresh mix, where it is known better than from its parts.
	WetDensity typed.Value `yaml:"wet_density,omitempty"`
	// Density when cured and dry.
	Cured typed.Value `yaml:"cured_density,omitempty"`
	// How long a batch can be worked at 20 C.
	WorkingLife typed.Value `yaml:"working_life,omitempty"`
	// Earliest time to the next coat at 20 C.
	NextCoat typed.Value `yaml:"next_coat,omitempty"`
	// Latest time to the next coat at 20 C.
	NextCoatEnd typed.Value `yaml:"next_coat_end,omitempty"`
	// Earliest demoulding at 20 C.
	Demould typed.Value `yaml:"demould,omitempty"`
	// Earliest edge levelling after the last coat, at 20 C.
	EdgeFrom typed.Value `yaml:"edge_from,omitempty"`
	// Latest edge levelling after the last coat, at 20 C.
	EdgeUntil typed.Value `yaml:"edge_until,omitempty"`
	// How long it stays under film at 20 C.
	Cover typed.Value `yaml:"cover,omitempty"`
	// Mixing before the fibre goes in.
	MixTime typed.Value `yaml:"mix_time,omitempty"`
	// Mixing with the fibre, at low speed.
	FibreTime typed.Value `yaml:"fibre_time,omitempty"`
	// Spread of the flow ring when the mix is right.
	Flow typed.Value `yaml:"flow_ring,omitempty"`
	// Compressive strength at 28 days in MPa.
	Strength typed.Value `yaml:"strength_28_mpa,omitempty"`
	// How fast the cement hardens: R rapid, N normal or S slow.
	Cement typed.Choice `yaml:"cement_class,omitempty"`
	// Arrhenius temperature of setting in kelvin, 4000 to 5000.
	Activation typed.Value `yaml:"activation_k,omitempty"`
	// Datum temperature of the maturity by temperature and time.
	Datum typed.Value `yaml:"datum,omitempty"`
	// Sizes of the dry blend, or of the cement.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// IngredientCard is one part of a mix as typed.
type IngredientCard struct {
	// Name of the part.
	Name typed.Text `yaml:"name"`
	// cement, pozzolan, sand, water, polymer, plasticiser, pigment, fibre or blend.
	Role typed.Choice `yaml:"role"`
	// Parts by mass, relative to the others. Not needed for fibre with a share.
	Parts typed.Value `yaml:"parts,omitempty"`
	// Specific gravity.
	SG typed.Value `yaml:"sg,omitempty"`
	// Solids of an emulsion or admixture; the rest is water.
	Solids typed.Value `yaml:"solids,omitempty"`
	// Water in damp sand, share of its dry mass.
	Moisture typed.Value `yaml:"moisture,omitempty"`
	// Share of fibre, in place of parts.
	Share typed.Value `yaml:"share,omitempty"`
	// What the share is of: total, rest (all but the fibre) or cement.
	Basis typed.Choice `yaml:"basis,omitempty"`
}

// BoardCard is a board as typed.
type BoardCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// Nominal thickness.
	Thickness typed.Value `yaml:"thickness,omitempty"`
	// Length of a sheet.
	Length typed.Value `yaml:"length,omitempty"`
	// Width of a sheet.
	Width typed.Value `yaml:"width,omitempty"`
	// Density.
	Density typed.Value `yaml:"density,omitempty"`
	// Modulus of elasticity in bending, MPa. Without it bowing is not checked.
	Modulus typed.Value `yaml:"modulus_mpa,omitempty"`
	// Specific gravity that screws hold by. Without it the density over 1000 kg/m3.
	Gravity typed.Value `yaml:"gravity,omitempty"`
	// Share of a screw's hold in the face that the edge has. Without it 60 %.
	Edge typed.Value `yaml:"edge_hold,omitempty"`
	// Temperature that its face and edge bear from warm resin.
	Service typed.Value `yaml:"service,omitempty"`
	// How sheets are sold.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// ScrewCard is a wood screw as typed.
type ScrewCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// Diameter of the thread.
	Diameter typed.Value `yaml:"diameter,omitempty"`
	// Length.
	Length typed.Value `yaml:"length,omitempty"`
	// How screws are sold, in pieces.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// FoamCard is a sheet of foam as typed.
type FoamCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// Nominal thickness.
	Thickness typed.Value `yaml:"thickness,omitempty"`
	// Length of a sheet.
	Length typed.Value `yaml:"length,omitempty"`
	// Width of a sheet.
	Width typed.Value `yaml:"width,omitempty"`
	// Density.
	Density typed.Value `yaml:"density,omitempty"`
	// Highest temperature in long use.
	Service typed.Value `yaml:"service,omitempty"`
	// How sheets are sold.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// ConsumableCard is a sealer, adhesive, caulk, wax, release or tape as typed.
type ConsumableCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// sealer, adhesive, caulk, release, wax or tape.
	Role typed.Choice `yaml:"role,omitempty"`
	// Coverage in m2 per litre, of caulk in m per cartridge, of tape in m per roll.
	Coverage typed.Value `yaml:"coverage,omitempty"`
	// Temperature that it bears from warm resin.
	Service typed.Value `yaml:"service,omitempty"`
	// Sizes that can be bought.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// TubeCard is a square steel tube as typed.
type TubeCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// Outer side.
	Side typed.Value `yaml:"side,omitempty"`
	// Wall thickness.
	Wall typed.Value `yaml:"wall,omitempty"`
	// Mass in kg per metre.
	MassPerM typed.Value `yaml:"kg_per_m,omitempty"`
	// Length of a bar as sold.
	Bar typed.Value `yaml:"bar,omitempty"`
	// How bars are sold.
	Packages []PackageCard `yaml:"packages,omitempty"`
}

// MachineCard is a router or a saw as typed.
type MachineCard struct {
	// Name of the card this one starts from.
	Like typed.Text `yaml:"like,omitempty"`
	// Origin of the card's values: measured, data sheet or typical.
	Origin typed.Choice `yaml:"origin,omitempty"`
	// Source of the card's values.
	Source typed.Text `yaml:"source,omitempty"`
	// Reach along the bed.
	BedX typed.Value `yaml:"bed_x,omitempty"`
	// Reach across the bed.
	BedY typed.Value `yaml:"bed_y,omitempty"`
	// Diameter of the cutter.
	Cutter typed.Value `yaml:"cutter,omitempty"`
	// Cutting length of the cutter.
	Flute typed.Value `yaml:"flute,omitempty"`
	// Feed.
	Feed typed.Value `yaml:"feed,omitempty"`
	// Plunge feed.
	Plunge typed.Value `yaml:"plunge,omitempty"`
	// Depth of one pass. Without it a quarter inch.
	PassDown typed.Value `yaml:"pass_down,omitempty"`
	// Fastest feed the machine keeps. Without it the rapid rate.
	MaxFeed typed.Value `yaml:"max_feed,omitempty"`
	// Speed of rapid moves; times depend on it. Without it 5000 mm/min.
	Rapid typed.Value `yaml:"rapid,omitempty"`
	// Height above the sheet at which the cutter travels, above all clamps. Without it 5 mm.
	SafeHeight typed.Value `yaml:"safe_height,omitempty"`
	// How far the cutter goes into the board below the sheet. Without it 0.3 mm.
	Overcut typed.Value `yaml:"overcut,omitempty"`
	// Acceleration in mm/s2; times depend on it. Without it 250.
	Acceleration typed.Value `yaml:"acceleration_mm_s2,omitempty"`
	// How far arcs may leave the path. Without it 0.01 mm.
	ArcTolerance typed.Value `yaml:"arc_tolerance,omitempty"`
	// Angle at which the cutter goes down into the foam. Without it 10 degrees.
	RampAngle typed.Value `yaml:"ramp_angle,omitempty"`
	// Tabs on each outline; 0 for none. Without it 4.
	Tabs typed.Value `yaml:"tabs,omitempty"`
	// Width of a tab. Without it 8 mm.
	TabWidth typed.Value `yaml:"tab_width,omitempty"`
	// Height of a tab. Without it 3 mm.
	TabHeight typed.Value `yaml:"tab_height,omitempty"`
	// Turns of the spindle in a minute, written where spindle is yes.
	SpindleRPM typed.Value `yaml:"spindle_rpm,omitempty"`
	// Whether programs start and stop the spindle: yes or no. Default no.
	Spindle typed.Choice `yaml:"spindle,omitempty"`
	// Units of the programs: mm or in. Default mm.
	Units typed.Choice `yaml:"units,omitempty"`
	// Way of the cutter along the part: climb or conventional. Default climb.
	Direction typed.Choice `yaml:"direction,omitempty"`
	// Diameter of the ball cutter for carving. Without it height maps are cut in layers only.
	Ball typed.Value `yaml:"ball,omitempty"`
	// Height of the ridges that carving leaves. Without it 0.2 mm.
	Scallop typed.Value `yaml:"scallop,omitempty"`
}

// PackageCard is a size that can be bought, as typed.
type PackageCard struct {
	// What is in it: 5 l, 1.5 US gal, 25 kg, 1 sheet, 1 bar, 1 cartridge.
	Quantity typed.Value `yaml:"quantity"`
	// Price in the shop's currency.
	Price typed.Value `yaml:"price,omitempty"`
}
