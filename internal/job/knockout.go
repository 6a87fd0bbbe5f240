package job

import (
	"fmt"
	"strings"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// KnockoutText is the making of the foam parts as typed.
type KnockoutText struct {
	// How the parts are cut: router, or templates for a saw. Default router where the machine has a bed.
	Route typed.Choice `yaml:"route,omitempty"`
	// Usable area of the bed, where it is not the card's.
	Bed BedText `yaml:"bed,omitempty"`
	// Kept free at the edges of bed and sheet; at least the cutter's diameter. Default 10 mm.
	Margin typed.Length `yaml:"margin,omitempty"`
	// Between parts on a sheet beyond the cutter's diameter. Default 2 mm.
	Spacing typed.Length `yaml:"spacing,omitempty"`
	// Least distance between seams of layers on each other. Default 75 mm.
	Stagger typed.Length `yaml:"stagger,omitempty"`
	// Least length of a piece that a layer is cut into. Default 120 mm.
	Smallest typed.Length `yaml:"smallest,omitempty"`
	// Form of the seams: straight (default), stepped or keyed.
	Seam typed.Choice `yaml:"seam,omitempty"`
	// Clearance round keys and steps. Default 0.15 mm.
	Clearance typed.Length `yaml:"clearance,omitempty"`
	// Diameter of the dowels between layers. Default 8 mm, or the next size the cutter enters.
	Dowel typed.Length `yaml:"dowel,omitempty"`
	// From a dowel's hole to the edge of a part. Default 12 mm.
	DowelMargin typed.Length `yaml:"dowel_margin,omitempty"`
	// Cut upper layers from the middles of lower ones: yes or no (default).
	Hollow typed.Choice `yaml:"hollow,omitempty"`
	// Glue land kept round a hollow. Default 40 mm.
	Land typed.Length `yaml:"land,omitempty"`
	// How parts may be turned on a sheet: any (default), 90, 180 or none.
	Turns typed.Choice `yaml:"turns,omitempty"`
	// Also carve a height map whole, with the machine's ball cutter: yes or no (default).
	Carve typed.Choice `yaml:"carve,omitempty"`
	// Parts that are cut already, as their labels say: L1-A/3f2c.
	Cut typed.List `yaml:"cut,omitempty"`
}

// BedText is a bed as typed.
type BedText struct {
	// Along the machine's x.
	X typed.Length `yaml:"x,omitempty"`
	// Along the machine's y.
	Y typed.Length `yaml:"y,omitempty"`
}

// OffcutText is a piece of foam left from earlier work, as typed.
type OffcutText struct {
	// What it is called on the shelf.
	Name typed.Text `yaml:"name"`
	// Its length, where it is a rectangle.
	Length typed.Length `yaml:"length,omitempty"`
	// Its width, where it is a rectangle.
	Width typed.Length `yaml:"width,omitempty"`
	// Its corners in order, each [x, y], where it is not.
	Outline []typed.List `yaml:"outline,omitempty"`
}

// Knockout is how the foam parts are made.
type Knockout struct {
	Router      bool         // else templates
	BedX, BedY  units.Length // usable; 0 for none
	Margin      units.Length
	Spacing     units.Length
	Stagger     units.Length
	Smallest    units.Length
	Seam        string // straight, stepped or keyed
	Clearance   units.Length
	Dowel       units.Length // 0: by the cutter
	DowelMargin units.Length
	Hollow      bool
	Land        units.Length
	Carve       bool     // a height map with the ball cutter, beside its layers
	Turns       string   // any, 90, 180 or none
	Cut         []string // ids, or id/mark
}

// An Offcut is a piece of foam left from earlier work.
type Offcut struct {
	Name    string
	Outline [][2]units.Length
}

// Chosen: likely sizes and defaults of the knockout's making.
var (
	likelyBed       = likely{100, 6000}
	likelyMargin    = likely{1, 100}
	likelyGap       = likely{0.1, 50}
	likelyStagger   = likely{1, 500}
	likelyPiece     = likely{20, 1000}
	likelyClearance = likely{0.02, 1}
	likelyDowel     = likely{3, 30}
	likelyRim       = likely{3, 100}
	likelyLand      = likely{10, 200}
	likelyCorner    = likely{0, 6100}
)

const (
	defaultMargin      units.Length = 10
	defaultGap         units.Length = 2
	defaultStagger     units.Length = 75
	defaultPiece       units.Length = 120
	defaultClearance   units.Length = 0.15 // 0.1 to 0.2 mm hold a key without glue. Chosen
	defaultDowelMargin units.Length = 12
	defaultLand        units.Length = 40
)

// knockout reads how the foam parts are made; the machine must be known.
func (r *resolver) knockout() {
	t, j := r.doc.Knockout, r.job
	k := Knockout{BedX: j.Machine.BedX.Value, BedY: j.Machine.BedY.Value}
	k.BedX, _ = r.length("knockout.bed.x", t.Bed.X, k.BedX, likelyBed)
	k.BedY, _ = r.length("knockout.bed.y", t.Bed.Y, k.BedY, likelyBed)
	k.Router = r.route(t.Route, k.BedX > 0 && k.BedY > 0)
	k.Margin, _ = r.length("knockout.margin", t.Margin, defaultMargin, likelyMargin)
	k.Spacing, _ = r.length("knockout.spacing", t.Spacing, defaultGap, likelyGap)
	k.Stagger, _ = r.length("knockout.stagger", t.Stagger, defaultStagger, likelyStagger)
	k.Smallest, _ = r.length("knockout.smallest", t.Smallest, defaultPiece, likelyPiece)
	k.Seam = r.word("knockout.seam", t.Seam, "straight", "stepped", "keyed")
	k.Clearance, _ = r.length("knockout.clearance", t.Clearance, defaultClearance, likelyClearance)
	k.Dowel, _ = r.length("knockout.dowel", t.Dowel, 0, likelyDowel)
	k.DowelMargin, _ = r.length("knockout.dowel_margin", t.DowelMargin, defaultDowelMargin, likelyRim)
	k.Hollow = r.word("knockout.hollow", t.Hollow, "no", "yes") == "yes"
	k.Land, _ = r.length("knockout.land", t.Land, defaultLand, likelyLand)
	k.Turns = r.word("knockout.turns", t.Turns, "any", "90", "180", "none")
	k.Carve = r.word("knockout.carve", t.Carve, "no", "yes") == "yes"
	if k.Carve && j.Basin.HeightMap == "" {
		r.say(unusual, "knockout.carve", "Only a height map is carved, and the basin has a drawing.").Remedy = "write basin.height_map, or take carve out"
		k.Carve = false
	}
	if k.Carve && !j.Machine.Ball.Known() {
		r.say(unusual, "knockout.carve", "The machine's card has no ball cutter.").Remedy = "write ball: with its diameter on the machine's card"
		k.Carve = false
	}
	for _, id := range t.Cut {
		if id = strings.TrimSpace(id); id != "" {
			k.Cut = append(k.Cut, id)
		}
	}
	j.Knockout = k
}

// route decides between router and templates.
func (r *resolver) route(text typed.Choice, bed bool) bool {
	if text == "" {
		return bed
	}
	router := r.word("knockout.route", text, "router", "templates") == "router"
	if router && !bed {
		r.missing("knockout.bed", "write bed: {x: 600 mm, y: 400 mm}, a machine with a bed, or route: templates")
		return false
	}
	return router
}

// offcuts reads the pieces of foam that are left.
func (r *resolver) offcuts() {
	for i, t := range r.doc.Foam.Offcuts {
		path := fmt.Sprintf("foam.offcuts[%d]", i)
		o := Offcut{Name: string(t.Name)}
		if o.Name == "" {
			o.Name = fmt.Sprintf("offcut %d", i+1)
		}
		if len(t.Outline) > 0 {
			o.Outline = r.outline(path+".outline", t.Outline)
		} else {
			l, _ := r.length(path+".length", t.Length, 0, likelySheet)
			w, _ := r.length(path+".width", t.Width, 0, likely{20, likelySheet.high})
			if l == 0 || w == 0 {
				r.missing(path+".length", "write length and width, or outline: with the corners in order")
				continue
			}
			o.Outline = [][2]units.Length{{0, 0}, {l, 0}, {l, w}, {0, w}}
		}
		if len(o.Outline) >= 3 {
			r.job.Foam.Offcuts = append(r.job.Foam.Offcuts, o)
		}
	}
}

// outline reads the corners of an offcut; nil where they bound no plain area.
func (r *resolver) outline(path string, corners []typed.List) [][2]units.Length {
	var out [][2]units.Length
	for i, c := range corners {
		field := fmt.Sprintf("%s[%d]", path, i)
		if len(c) != 2 {
			r.say(unreadable, field, "%s has %s.", field, units.Count(len(c), "number", "numbers")).Remedy = "write every corner as [x, y]"
			return nil
		}
		x, okX := r.length(field, typed.Length(c[0]), 0, likelyCorner)
		y, okY := r.length(field, typed.Length(c[1]), 0, likelyCorner)
		if !okX || !okY {
			return nil
		}
		out = append(out, [2]units.Length{x, y})
	}
	if !plainArea(out) {
		r.say(unreadable, path, "%s bounds no plain area: it crosses itself or is empty.", path).Remedy = "write the corners in order round the piece"
		return nil
	}
	return out
}

// plainArea reports whether corners in order bound one area of more than 1 mm2 without
// crossing themselves.
func plainArea(c [][2]units.Length) bool {
	turn := func(a, b, p [2]units.Length) float64 {
		return float64((b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0]))
	}
	n, twice := len(c), 0.0
	for i, a := range c {
		b := c[(i+1)%n]
		twice += turn(c[0], a, b)
		for k := i + 2; k < n && (k+1)%n != i; k++ {
			p, q := c[k], c[(k+1)%n]
			if turn(a, b, p)*turn(a, b, q) < 0 && turn(p, q, a)*turn(p, q, b) < 0 {
				return false
			}
		}
	}
	return twice > 2 || twice < -2
}
