package concrete

import (
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Result is what to mix.
type Result struct {
	CastSurface units.Area     `json:"cast_surface_mm2"`
	Surfaces    Surfaces       `json:"surfaces"`
	Shell       units.Length   `json:"shell_thickness_mm"`
	ShellVolume units.Volume   `json:"shell_volume_l"`
	Naive       units.Volume   `json:"area_times_thickness_l"`
	NaiveOver   units.Fraction `json:"area_times_thickness_over"` // naive / true - 1
	Converged   units.Fraction `json:"converged_to"`              // relative change at the last halving
	Coats       []CoatResult   `json:"coats"`
	Recipes     []Recipe       `json:"recipes"`
	Batches     []Batch        `json:"batches"`
	ShellMass   units.Mass     `json:"shell_kg"`

	Zones    []ZoneResult `json:"zones"`
	Pockets  []Pocket     `json:"pockets"` // too narrow to stay hollow
	Sheet    []Step       `json:"order_of_addition"`
	Reserve  Reserve      `json:"reserve"`
	Climate  []Stretch    `json:"climate"` // as used
	Windows  []Window     `json:"windows"`
	Strength []Strength   `json:"strength"`
	Air      Air          `json:"air"`
	Drying   Drying       `json:"drying"`
	Masks    []Mask       `json:"masks"`
	Packing  []PackZone   `json:"packing"`
	Spray    []Pass       `json:"spray"`
	Gauges   []Gauge      `json:"gauges"`
	Scrim    ScrimPlan    `json:"scrim"`
}

// Surfaces is the mould's area by kind.
type Surfaces struct {
	Face  units.Area `json:"face_mm2"`  // form base outside the knockout: the show face
	Floor units.Area `json:"floor_mm2"` // tops of the knockout: basin floors
	Riser units.Area `json:"riser_mm2"` // upright sides of the knockout
	Wall  units.Area `json:"wall_mm2"`  // form sides less the mouths
}

// CoatResult is one coat's concrete in place.
type CoatResult struct {
	Name      string       `json:"name"`
	Mix       string       `json:"mix"`
	Thickness units.Length `json:"thickness_mm"`
	Volume    units.Volume `json:"volume_l"`
	Mass      units.Mass   `json:"mass_kg"`   // wet, in place
	ToMix     units.Mass   `json:"to_mix_kg"` // with spare

	Top        units.Length   `json:"top_thickness_mm"`  // on face and floors
	Heel       units.Length   `json:"heel_thickness_mm"` // on the sides next to the foot
	Cumulative units.Volume   `json:"cumulative_l"`      // with all coats before it
	Naive      units.Volume   `json:"area_times_thickness_l"`
	Starts     units.Duration `json:"starts_h"` // after casting begins: the first weighing
	Takes      units.Duration `json:"takes_h"`
	Decided    string         `json:"batch_decided_by"` // tub, mixer, hands
	TubHolds   units.Mass     `json:"tub_holds_kg"`
	MixerHolds units.Mass     `json:"mixer_holds_kg"` // 0: not stated
	HandsPack  units.Mass     `json:"hands_pack_kg"`  // within the working life
	Area       units.Area     `json:"area_mm2"`       // of the surface it covers
}

// Recipe is a mix by absolute volume.
type Recipe struct {
	Mix        string         `json:"mix"`
	Parts      []Part         `json:"parts_per_m3"`
	WetDensity units.Density  `json:"wet_density_kg_m3"`
	WaterRatio float64        `json:"water_to_cementitious"` // or to dry blend for a bagged mix
	Polymer    float64        `json:"polymer_solids_to_cementitious"`
	Fibre      float64        `json:"fibre_of_total"`
	Air        units.Fraction `json:"air"`

	CuredDensity  units.Density `json:"cured_density_kg_m3"`
	EmulsionWater float64       `json:"emulsion_water_of_all_water"`
	SandWater     float64       `json:"sand_water_of_all_water"`
	FibreOfRest   float64       `json:"fibre_of_the_rest"`
	Pigment       float64       `json:"pigment_to_cementitious"`
}

// Batch is one tub.
type Batch struct {
	Number     int          `json:"number"` // in building order
	Coat       string       `json:"coat"`
	Of         int          `json:"of"` // batches in this coat
	Mass       units.Mass   `json:"mass_kg"`
	Volume     units.Volume `json:"volume_l"`
	Parts      []Part       `json:"parts"`
	WaterFirst units.Mass   `json:"water_first_kg"` // 80 % at the start
	WaterUpTo  units.Mass   `json:"water_up_to_kg"` // the recipe's water
	WaterNever units.Mass   `json:"water_never_above_kg"`

	Steps       []Addition     `json:"steps"`                // in the order of mixing
	ScaleNever  units.Mass     `json:"scale_never_above_kg"` // reading before the fibre
	Minutes     float64        `json:"mix_minutes"`          // before the fibre
	FibreMins   float64        `json:"fibre_minutes"`        // 0 without fibre
	Start       units.Duration `json:"start_h"`              // first water, after casting begins
	StartBy     units.Duration `json:"start_by_h"`           // latest, so that it joins the batch before wet in wet
	UseBy       units.Duration `json:"use_by_h"`             // end of its working life
	Life        units.Duration `json:"working_life_h"`       // at the shop's temperature
	Flow        units.Length   `json:"flow_ring_mm"`         // spread of the flow ring; 0: not on the card
	Consistency string         `json:"consistency"`          // the test in words
	Cautions    []string       `json:"cautions"`
}

// Part is one ingredient weighed.
type Part struct {
	Name string     `json:"name"`
	Role string     `json:"role"`
	Mass units.Mass `json:"mass_kg"`
}

// Addition is one thing that goes into the tub. ScaleReads is what a scale under the
// tub reads that is never set back.
type Addition struct {
	What       string     `json:"what"`
	Role       string     `json:"role"`
	How        string     `json:"how"`
	Mass       units.Mass `json:"mass_kg"`
	ScaleReads units.Mass `json:"scale_reads_kg"`
}

// A Step is a line of the order of addition.
type Step struct {
	Number int    `json:"number"`
	Text   string `json:"text"`
}

// Reserve is dry mix of the face kept back, so that patches have its colour.
type Reserve struct {
	Mix   string     `json:"mix"`
	Dry   units.Mass `json:"dry_kg"`
	Parts []Part     `json:"parts"`
	Water units.Mass `json:"water_kg"` // for all of it
}

// ZoneResult is a zone as used.
type ZoneResult struct {
	Surface   string       `json:"surface"`
	Thickness units.Length `json:"thickness_mm"`
	Height    units.Length `json:"height_mm"`
	Change    units.Volume `json:"change_l"` // of the shell's volume by this zone
}

// A Pocket is a place too narrow for the shells of both sides: it packs solid.
type Pocket struct {
	Kind   string       `json:"kind"`  // between: two mould faces; solid: the whole piece
	Layer  int          `json:"layer"` // of the knockout beside it
	X      units.Length `json:"x_mm"`  // finished view
	Y      units.Length `json:"y_mm"`
	Width  units.Length `json:"width_mm"`
	Needed units.Length `json:"needed_mm"` // to stay hollow
	Depth  units.Length `json:"depth_mm"`  // of the mould beside it
}

// A Window is from when until when something can be done, by two models, hours after
// Of. Planned lies inside both.
type Window struct {
	Name      string            `json:"name"` // working life, next coat, edges, cover, demould
	Coat      string            `json:"coat"` // "" of the whole casting
	Of        string            `json:"of"`   // what the hours count from
	At        units.Duration    `json:"at_h"` // when that is, after casting begins
	Temp      units.Temperature `json:"mean_temp_c"`
	Reference Span              `json:"at_20_c"`
	Arrhenius Span              `json:"arrhenius"`
	NurseSaul Span              `json:"nurse_saul"`
	Planned   Span              `json:"planned"`
	Differ    bool              `json:"models_differ"` // by more than a tenth
	Touch     string            `json:"touch_test"`    // what decides beside the clock
}

// A Span is hours; Until 0 is open.
type Span struct {
	From  units.Duration `json:"from_h"`
	Until units.Duration `json:"until_h"`
}

// Strength is when the concrete carries a step of the work.
type Strength struct {
	For     string         `json:"for"` // demould, flip, work
	Coat    string         `json:"coat"`
	Need    float64        `json:"need_mpa"`
	ACI     units.Duration `json:"aci_209_h"`
	EN      units.Duration `json:"en_1992_h"`
	Planned units.Duration `json:"planned_h"` // the later, after the last coat
	Basis   string         `json:"basis"`     // card, or the maker's own records
	At28    float64        `json:"at_28_days_mpa"`
	Factor  float64        `json:"calibration"`
}

// Air is what the shop's air does to a fresh face.
type Air struct {
	Humidity    units.Fraction    `json:"humidity"`
	Assumed     bool              `json:"humidity_assumed"`
	Mix         units.Temperature `json:"mix_temp_c"`
	Draught     float64           `json:"air_speed_km_h"`
	Evaporation float64           `json:"evaporation_kg_m2_h"`
	Limit       float64           `json:"limit_kg_m2_h"`
	Risk        string            `json:"crazing_risk"` // low, cover at once, too fast
	DewPoint    units.Temperature `json:"dew_point_c"`
	Coldest     units.Temperature `json:"coldest_face_c"` // no coat or resin on a face under it
}

// Drying is how the shell gets dry enough for resin.
type Drying struct {
	Planned units.Duration `json:"planned_h"`
	Usual   Span           `json:"usual"`
	Loss    units.Mass     `json:"may_lose_kg"` // water of the mix beyond the cured density
	Steady  units.Mass     `json:"steady_within_kg"`
	Every   units.Duration `json:"weigh_every_h"`
	Sheet   units.Duration `json:"sheet_test_h"`
	Steps   []string       `json:"steps"`
}

// A Mask says what is done to one kind of surface before resin.
type Mask struct {
	Surface string       `json:"surface"` // face, wall, floor, riser
	Finish  string       `json:"finish"`  // sealed, keyed
	Area    units.Area   `json:"area_mm2"`
	Sealer  units.Volume `json:"sealer_l"` // of one coat; 0 where keyed
	Why     string       `json:"why"`

	Region view.Region[view.Finished] `json:"-"` // in plan; empty for upright faces
}

// A PackZone is what one person packs of one batch: a strip across the form.
type PackZone struct {
	Coat   string         `json:"coat"`
	Batch  int            `json:"batch"`
	Person int            `json:"person"`
	From   units.Length   `json:"from_x_mm"` // form view
	To     units.Length   `json:"to_x_mm"`
	Area   units.Area     `json:"area_mm2"` // of mould
	Mass   units.Mass     `json:"mass_kg"`  // in place: this much used is this thick
	Start  units.Duration `json:"start_h"`
	End    units.Duration `json:"end_h"`
	Opens  units.Duration `json:"window_opens_h"`  // of the coat below, where this zone begins
	Closes units.Duration `json:"window_closes_h"` // latest end; 0 on the mould
	Late   bool           `json:"late"`            // ends after the window closes
}

// A Pass is one sweep of the first coat's spraying, form view.
type Pass struct {
	Number int        `json:"number"`
	On     string     `json:"on"`   // riser, floor, face, wall
	Text   string     `json:"text"` // gun, tilt, direction
	From   geom.Point `json:"from_mm"`
	To     geom.Point `json:"to_mm"`
}

// A Gauge is a place to push a pin in, form view.
type Gauge struct {
	Number int            `json:"number"`
	X      units.Length   `json:"x_mm"`
	Y      units.Length   `json:"y_mm"`
	On     string         `json:"on"`        // face, floor
	Depths []units.Length `json:"depths_mm"` // after each coat
}

// ScrimPlan is the mesh to cut.
type ScrimPlan struct {
	Pieces []ScrimPiece   `json:"pieces"`
	Area   units.Area     `json:"area_mm2"` // of the pieces
	Roll   units.Length   `json:"roll_mm"`
	Length units.Length   `json:"roll_length_mm"` // to cut from
	Lap    units.Length   `json:"lap_mm"`
	Into   string         `json:"into"` // the coat that it is pressed into
	Waste  units.Fraction `json:"waste"`
}

// ScrimPiece is one piece of mesh: where it lies in the form (form view) and where it
// is cut from the roll.
type ScrimPiece struct {
	Number int          `json:"number"`
	For    string       `json:"for"` // top, mouth, neck
	Length units.Length `json:"length_mm"`
	Width  units.Length `json:"width_mm"`
	X      units.Length `json:"x_mm"`
	Y      units.Length `json:"y_mm"`
	RollX  units.Length `json:"roll_x_mm"` // along the roll
	RollY  units.Length `json:"roll_y_mm"`
	Turned bool         `json:"turned"`
}
