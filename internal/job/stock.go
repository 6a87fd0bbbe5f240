package job

import (
	"fmt"

	"pourwright/internal/material"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// StockText is boards or bars that are owned, as typed.
type StockText struct {
	// What it is called in the shop.
	Name typed.Text `yaml:"name,omitempty"`
	// Name of the board or tube on the shelf. Default the form's board.
	Material typed.Text `yaml:"material,omitempty"`
	// Its length.
	Length typed.Length `yaml:"length"`
	// Its width; bars have none.
	Width typed.Length `yaml:"width,omitempty"`
	// How many. Default 1.
	Count typed.Number `yaml:"count,omitempty"`
	// Thickness by caliper, where it is not the form's.
	Measured typed.Length `yaml:"measured,omitempty"`
	// Parts of a used board that cannot be used again.
	Marks []MarkText `yaml:"marks,omitempty"`
}

// MarkText is a bad part of a board as typed.
type MarkText struct {
	// Its lower left corner, [x, y] from the board's own, x along its length.
	At typed.List `yaml:"at"`
	// Its size along the board's length.
	Length typed.Length `yaml:"length"`
	// Its size across.
	Width typed.Length `yaml:"width"`
	// What it is: holes, damaged film.
	Why typed.Text `yaml:"why,omitempty"`
}

// Stock is boards or bars that are owned.
type Stock struct {
	Name, Material string
	Length, Width  units.Length
	Count          int
	Measured       units.Length // 0: as the form's
	Marks          []Mark
	Field          string
}

// A Mark is a part of a board that cannot be used.
type Mark struct {
	X, Y, Length, Width units.Length
	Why                 string
}

// BaseText is the inset base as typed.
type BaseText struct {
	// Name of the board on the shelf. Default plywood 18.
	Board typed.Text `yaml:"board,omitempty"`
	// Thickness by caliper.
	Measured typed.Length `yaml:"measured,omitempty"`
	// Height of the carcass. Default the hollow and 20 mm under the shell's foot.
	Height typed.Length `yaml:"height,omitempty"`
	// Room between carcass and shell on every side. Default 3 mm.
	Clearance typed.Length `yaml:"clearance,omitempty"`
	// Boards across the carcass between its ends. Default 0.
	Dividers typed.Number `yaml:"dividers,omitempty"`
	// How boards meet: butt (default) or groove.
	Joint typed.Choice `yaml:"joint,omitempty"`
	// Depth of the grooves. Default 5 mm.
	Groove typed.Length `yaml:"groove,omitempty"`
	// Sides with storage openings: none (default), near, far or both.
	Open typed.Choice `yaml:"open,omitempty"`
	// Board left round an opening. Default 60 mm.
	Rail typed.Length `yaml:"rail,omitempty"`
}

// Base is the inset base.
type Base struct {
	Board             material.Board
	Measured          units.Length
	Height, Clearance units.Length
	Dividers          int
	Joint             string // butt or groove
	Groove            units.Length
	Open              string // none, near, far or both
	Rail              units.Length
}

// stock reads what is owned. What has no size or count is said and left out.
func (r *resolver) stock() {
	for i, t := range r.doc.Stock {
		r.stockEntry(fmt.Sprintf("stock[%d]", i), t)
	}
}

func (r *resolver) stockEntry(field string, t StockText) {
	s := Stock{Name: string(t.Name), Material: string(t.Material), Field: field}
	if s.Material == "" {
		s.Material = r.job.Form.Board.Name
	}
	_, noTube := r.shelf.Tube(s.Material)
	if _, noBoard := r.shelf.Board(s.Material); noBoard != nil && noTube != nil {
		r.say(notOnShelf, field+".material", "%s; the stock is left out.", noBoard.Error()).Remedy = noBoard.Remedy()
		return
	}
	if s.Name == "" {
		s.Name = fmt.Sprintf("stock %d", len(r.job.Stock)+1)
	}
	var okL, okW bool
	if t.Length == "" {
		r.missing(field+".length", "write its length")
		return
	}
	s.Length, okL = r.length(field+".length", t.Length, 0, likely{20, 20000})
	s.Width, okW = r.length(field+".width", t.Width, 0, likely{20, likelySheet.high})
	if noTube != nil && t.Width == "" {
		r.missing(field+".width", "write the board's width")
		return
	}
	s.Measured, _ = r.length(field+".measured", t.Measured, 0, likelyBoard)
	s.Count = 1
	if t.Count != "" {
		n, ok := parse(r, field+".count", string(t.Count), units.ParseNumber)
		if !ok {
			return
		}
		if n < 1 || n > 1000 || n != float64(int(n)) {
			r.say(notPositive, field+".count", "%s is %s; the stock is left out.", field+".count", t.Count).Remedy = "write a whole number from 1 to 1000, or take the entry out"
			return
		}
		s.Count = int(n)
	}
	if !okL || !okW {
		return
	}
	for k, m := range t.Marks {
		if mark, ok := r.mark(fmt.Sprintf("%s.marks[%d]", field, k), m); ok {
			s.Marks = append(s.Marks, mark)
		}
	}
	r.job.Stock = append(r.job.Stock, s)
}

func (r *resolver) mark(field string, t MarkText) (Mark, bool) {
	at, ok := r.spot(field+".at", t.At)
	m := Mark{X: at[0], Y: at[1], Why: string(t.Why)}
	if t.Length == "" || t.Width == "" {
		r.missing(field, "write the mark's length and width")
		return m, false
	}
	var okL, okW bool
	m.Length, okL = r.length(field+".length", t.Length, 0, likely{1, 6100})
	m.Width, okW = r.length(field+".width", t.Width, 0, likely{1, 6100})
	return m, ok && okL && okW
}

// base reads the inset base.
func (r *resolver) base() {
	t := r.doc.Base
	if t == nil {
		return
	}
	b := &Base{Board: card(r, "base.board", t.Board, defaultBase, r.shelf.Board)}
	b.Measured, _ = r.length("base.measured", t.Measured, b.Board.Thickness.Value, likelyBoard)
	r.apart("base.measured", b.Measured, b.Board.Thickness.Value, boardApart)
	b.Height, _ = r.length("base.height", t.Height, 0, likelyHeight)
	b.Clearance, _ = r.length("base.clearance", t.Clearance, defaultInset, likely{0, 200})
	b.Dividers = r.whole("base.dividers", t.Dividers, 0, 0, 20)
	b.Joint = r.word("base.joint", t.Joint, "butt", "groove")
	b.Groove, _ = r.length("base.groove", t.Groove, defaultGroove, likely{1, 30})
	b.Open = r.word("base.open", t.Open, "none", "near", "far", "both")
	b.Rail, _ = r.length("base.rail", t.Rail, defaultRail, likely{10, 500})
	r.job.Base = b
}

// defaultBase is the board of a base that names none.
const defaultBase = "plywood 18"
