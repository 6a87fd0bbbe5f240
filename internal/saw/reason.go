package saw

// A Fault says what is wrong with a problem or could not be done.
type Fault string

// The faults.
const (
	BadNumber   Fault = "bad-number"   // not finite, zero or negative where a size is needed
	BadStock    Fault = "bad-stock"    // stock of no or negative count or size; it is left out
	NoStock     Fault = "no-stock"     // no stock at all that can be cut
	KerfEats    Fault = "kerf-eats"    // fits without kerf, not with it
	TrimEats    Fault = "trim-eats"    // fits without trim, not with it
	NeedsTurn   Fault = "needs-turn"   // fits only against its grain
	ZoneInWay   Fault = "zone-in-way"  // fits only over an excluded zone
	TooLarge    Fault = "too-large"    // fits no stock at all
	OutOfStock  Fault = "out-of-stock" // fits, but there is not enough
	TooNarrow   Fault = "too-narrow"   // placed, but narrower than can be held
	TooMany     Fault = "too-many"     // more pieces than Limit
	CutCannotBe Fault = "cut-unheld"   // placed, but a cut leaves nothing wide enough at the fence
)

// A Remedy is the nearest way out.
type Remedy string

// The remedies, with the number of Reason that goes with each.
const (
	Correct     Remedy = "correct"      // the number typed
	Join        Remedy = "join"         // from Parts parts
	Buy         Remedy = "buy"          // a sheet or bar of at least LengthMM x WidthMM
	BuyMore     Remedy = "buy-more"     // Parts more of the named stock, at least
	TurnPiece   Remedy = "turn"         // let it turn
	ThinnerKerf Remedy = "thinner-kerf" // at most LimitMM
	LessTrim    Remedy = "less-trim"    // ShortMM less in all
	Hold        Remedy = "hold"         // with a carrier board, or cut from a wider part
	Divide      Remedy = "divide"       // into lists of at most Parts pieces
)

// A Reason says why something was left out or needs care, with the numbers for a
// sentence.
type Reason struct {
	Fault    Fault   `json:"fault"`
	Remedy   Remedy  `json:"remedy"`
	Piece    string  `json:"piece,omitempty"` // name
	Stock    string  `json:"stock,omitempty"` // name
	Field    string  `json:"field,omitempty"` // of a bad number
	Got      float64 `json:"got"`             // the bad number; 0 where it is not finite
	ShortMM  float64 `json:"short_mm"`        // by how much it does not fit
	LimitMM  float64 `json:"limit_mm"`        // thickest kerf that fits, narrowest strip that holds
	LengthMM float64 `json:"length_mm"`       // of what to buy
	WidthMM  float64 `json:"width_mm"`
	Parts    int     `json:"parts"`
	Placed   bool    `json:"placed"` // the piece is in the plan all the same
}

// Limit is the most pieces in one problem, copies counted.
const Limit = 1000
