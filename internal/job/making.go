package job

import (
	"fmt"
	"strings"

	"pourwright/internal/material"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// Chosen: what a document that says nothing gets.
const (
	defaultScrew                = "screw 5 x 50"
	defaultBow     units.Length = 1
	defaultBead    units.Length = 5
	defaultTilt                 = 45.0 // degrees
	defaultNarrow  units.Length = 40
	defaultOffcutX units.Length = 300
	defaultOffcutY units.Length = 100
	defaultBattenX units.Length = 45
	defaultBattenY units.Length = 70
	defaultLap     units.Length = 40
	defaultInset   units.Length = 3
	defaultGroove  units.Length = 5
	defaultRail    units.Length = 60
)

// BattenText is a batten as typed.
type BattenText struct {
	// Across the wall. Default 45 mm.
	Width typed.Length `yaml:"width,omitempty"`
	// Away from the wall. Default 70 mm.
	Depth typed.Length `yaml:"depth,omitempty"`
}

// DamText is how dams are made, as typed.
type DamText struct {
	// Name of the board on the shelf. Default the form's.
	Board typed.Text `yaml:"board,omitempty"`
	// How far a dam laps the concrete round the mouth. Default 40 mm.
	Lap typed.Length `yaml:"lap,omitempty"`
	// What lines its face: tape or sheet, by its name on the shelf. Default polypropylene packing tape.
	Liner typed.Text `yaml:"liner,omitempty"`
	// What resin comes off it by, by its name on the shelf. Default none beside the liner.
	Release typed.Text `yaml:"release,omitempty"`
}

// InsertText is a part cast into the shell, as typed.
type InsertText struct {
	// What it is called.
	Name typed.Text `yaml:"name"`
	// insert (threaded; default), cable (a way through the shell) or seat (of a support).
	Kind typed.Choice `yaml:"kind,omitempty"`
	// Its middle, [x, y] from the near left corner in FINISHED VIEW.
	At typed.List `yaml:"at"`
	// Outer diameter, of a seat its longer side.
	Diameter typed.Length `yaml:"diameter"`
	// How deep it goes into the concrete from its back. Not needed for a cable way.
	Depth typed.Length `yaml:"depth,omitempty"`
}

// Making is how the form is cut and put together.
type Making struct {
	Sides     string // outside or on
	Flowable  bool
	Bow, Bead units.Length
	Screw     material.Screw
	Tilt      float64 // degrees
	Narrowest units.Length
	OffcutX   units.Length
	OffcutY   units.Length
	BattenX   units.Length
	BattenY   units.Length
	DamBoard  string // name; "" for the form's
	DamLap    units.Length
	Dam       Dam
	Inserts   []Insert
}

// A Dam is what warm resin touches at a mouth.
type Dam struct {
	Board   material.Board
	Liner   material.Consumable
	Release *material.Consumable // nil: none
}

// An Insert is a part cast into the shell.
type Insert struct {
	Name, Kind      string
	X, Y            units.Length // FINISHED VIEW
	Diameter, Depth units.Length
	Field           string
}

var (
	likelyBow    = likely{0.05, 10}
	likelyBead   = likely{0.5, 30}
	likelyStrip  = likely{0, 200}
	likelyBatten = likely{10, 300}
	likelyLap    = likely{5, 300}
	likelyPart   = likely{1, 300}
)

// making reads how the form is cut and put together.
func (r *resolver) making() {
	t, m := r.doc.Form, &r.job.Form.Making
	m.Sides = r.word("form.sides", t.Sides, "outside", "on")
	m.Flowable = r.word("form.mix", t.Mix, "packed", "flowable") == "flowable"
	m.Bow, _ = r.length("form.bow", t.Bow, defaultBow, likelyBow)
	m.Bead, _ = r.length("form.bead", t.Bead, defaultBead, likelyBead)
	m.Screw = card(r, "form.screw", t.Screw, defaultScrew, r.shelf.Screw)
	m.Tilt = r.number("form.tilt", t.Tilt, defaultTilt, 0, 60, "degrees")
	m.Narrowest, _ = r.length("form.narrowest", t.Narrowest, defaultNarrow, likelyStrip)
	m.OffcutX, _ = r.length("form.smallest_offcut.length", t.SmallestOffcut.Length, defaultOffcutX, likelySheet)
	m.OffcutY, _ = r.length("form.smallest_offcut.width", t.SmallestOffcut.Width, defaultOffcutY, likely{20, likelySheet.high})
	m.BattenX, _ = r.length("form.batten.width", t.Batten.Width, defaultBattenX, likelyBatten)
	m.BattenY, _ = r.length("form.batten.depth", t.Batten.Depth, defaultBattenY, likelyBatten)
	m.DamLap, _ = r.length("form.dam.lap", t.Dam.Lap, defaultLap, likelyLap)
	if t.Dam.Board != "" {
		m.DamBoard = card(r, "form.dam.board", t.Dam.Board, r.job.Form.Board.Name, r.shelf.Board).Name
	}
	r.dam()
	for i, x := range t.Inserts {
		r.insert(fmt.Sprintf("form.inserts[%d]", i), x)
	}
}

// dam reads what warm resin touches at a mouth.
func (r *resolver) dam() {
	t, d := r.doc.Form.Dam, &r.job.Form.Making.Dam
	d.Board = r.job.Form.Board
	if name := r.job.Form.Making.DamBoard; name != "" {
		if b, missing := r.shelf.Board(name); missing == nil {
			d.Board = b
		}
	}
	d.Liner = card(r, "form.dam.liner", t.Liner, defaultLiner, r.shelf.Consumable)
	if t.Release != "" {
		if c, missing := r.shelf.Consumable(string(t.Release)); missing == nil {
			d.Release = &c
		} else {
			r.say(notOnShelf, "form.dam.release", "%s; none is used.", missing.Error()).Remedy = missing.Remedy()
		}
	}
}

// insert reads one insert; one without a place is left out.
func (r *resolver) insert(field string, t InsertText) {
	x := Insert{Name: string(t.Name), Field: field, Kind: r.word(field+".kind", t.Kind, "insert", "cable", "seat")}
	if x.Name == "" {
		x.Name = x.Kind
	}
	at, ok := r.spot(field+".at", t.At)
	if !ok {
		return
	}
	x.X, x.Y = at[0], at[1]
	if t.Diameter == "" {
		r.missing(field+".diameter", "write the outer diameter")
	}
	x.Diameter, _ = r.length(field+".diameter", t.Diameter, 0, likelyPart)
	if t.Depth == "" && x.Kind != "cable" {
		r.missing(field+".depth", "write how deep it goes into the concrete")
	}
	x.Depth, _ = r.length(field+".depth", t.Depth, 0, likelyPart)
	r.job.Form.Making.Inserts = append(r.job.Form.Making.Inserts, x)
}

// spot reads [x, y].
func (r *resolver) spot(field string, t typed.List) (at [2]units.Length, ok bool) {
	if len(t) != 2 {
		r.say(unreadable, field, "%s has %s.", field, units.Count(len(t), "number", "numbers")).Remedy = "write it as [x, y], from the near left corner in FINISHED VIEW"
		return at, false
	}
	for i, text := range t {
		v, read := r.length(field, typed.Length(text), 0, likelyCorner)
		if !read {
			return at, false
		}
		at[i] = v
	}
	return at, true
}

// outlineOfBox reads the corners of an outline; whether it is convex is for the form
// to say.
func (r *resolver) outlineOfBox() {
	t := r.doc.Box.Outline
	if len(t) == 0 {
		return
	}
	if len(t) < 3 || len(t) > 60 {
		r.say(unreadable, "box.outline", "box.outline has %s; the rectangle is used.", units.Count(len(t), "corner", "corners")).Remedy = "write from 3 to 60 corners in order, each as [x, y]"
		return
	}
	var out [][2]units.Length
	for i, c := range t {
		at, ok := r.spot(fmt.Sprintf("box.outline[%d]", i), c)
		if !ok {
			return
		}
		out = append(out, at)
	}
	r.job.Outline = out
}

// holes reads the bolt holes of a tube and where tubes lie.
func (r *resolver) holes(field string, t ExtraText, e *Extra) {
	bolt := r.word(field+".bolt", typed.Choice(strings.ToLower(string(t.Bolt))), "m8", "m6", "m10", "m12")
	e.Bolt = map[string]units.Length{"m6": 6, "m8": 8, "m10": 10, "m12": 12}[bolt]
	e.FromEnd, _ = r.length(field+".from_end", t.FromEnd, 0, likely{5, 3000})
	for i, text := range t.At {
		at := fmt.Sprintf("%s.at[%d]", field, i)
		if v, ok := r.length(at, typed.Length(text), 0, likelyCorner); ok {
			e.At = append(e.At, v)
		}
	}
}
