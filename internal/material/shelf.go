package material

import (
	"embed"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"pourwright/internal/finding"
	"pourwright/internal/typed"
)

//go:embed shelf/*.yaml
var own embed.FS

// Default returns the program's own shelf: generic cards, every value typical. The
// maps are the caller's to change.
func Default() (Shelf, error) {
	s, err := ownShelf()
	if err != nil {
		return Shelf{}, fmt.Errorf("read the shelf: %w", err)
	}
	return s.clone(), nil
}

var ownShelf = sync.OnceValues(func() (Shelf, error) {
	s := empty()
	entries, err := own.ReadDir("shelf")
	if err != nil {
		return s, err
	}
	for _, e := range entries { // in the order of their names
		name := path.Join("shelf", e.Name())
		data, err := own.ReadFile(name)
		if err != nil {
			return s, err
		}
		if s, err = Read(name, data, s); err != nil {
			return s, err
		}
	}
	return s, nil
})

func empty() Shelf {
	return Shelf{Resins: map[string]Resin{}, Mixes: map[string]Mix{}, Boards: map[string]Board{}, Foams: map[string]Foam{},
		Consumables: map[string]Consumable{}, Tubes: map[string]Tube{}, Machines: map[string]Machine{}, Screws: map[string]Screw{}}
}

// clone copies the maps; cards are values, and their lists are never written to.
func (s Shelf) clone() Shelf {
	e := empty()
	maps.Copy(e.Resins, s.Resins)
	maps.Copy(e.Mixes, s.Mixes)
	maps.Copy(e.Boards, s.Boards)
	maps.Copy(e.Foams, s.Foams)
	maps.Copy(e.Consumables, s.Consumables)
	maps.Copy(e.Tubes, s.Tubes)
	maps.Copy(e.Machines, s.Machines)
	maps.Copy(e.Screws, s.Screws)
	return e
}

// An Error is a shelf file that cannot be used, with all that is wrong in it.
type Error struct {
	File     string
	Findings []finding.Finding
}

// Error says every fault with its place, one on a line.
func (e *Error) Error() string {
	lines := make([]string, len(e.Findings))
	for i, f := range e.Findings {
		lines[i] = fmt.Sprintf("%s: %s", f.Where, f.Text)
	}
	return strings.Join(lines, "\n")
}

// Hint returns the first remedy.
func (e *Error) Hint() string {
	if len(e.Findings) == 0 {
		return ""
	}
	return e.Findings[0].Remedy
}

// Read reads a shelf file and returns base extended by it; base stays as it is.
// The error is *Error and lists every fault with file, line and column.
func Read(name string, data []byte, base Shelf) (Shelf, error) {
	var file File
	places, found, ok := typed.Decode(name, data, &file)
	if !ok || len(found) > 0 {
		return base, &Error{name, found}
	}
	out, found := Extend(base, file, places, "", Bare{})
	if len(found) > 0 {
		return base, &Error{name, found}
	}
	return out, nil
}

// Extend returns base with the cards of file added or changed. path is where the
// file's fields stand in places: "" for a shelf file, "materials" in a document. A
// card with faults is left out, or stays as it was in base. bare says how bare
// numbers are read.
func Extend(base Shelf, file File, places typed.Places, path string, bare Bare) (Shelf, []finding.Finding) {
	out := base.clone()
	e := &extender{places: places, path: path, bare: bare, pedigree: pedigree{}.or(file.Origin, file.Source)}
	for _, name := range Names(file.Resins) {
		c := file.Resins[name]
		add(e, "resins", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Resins, func(r *reader, x *Resin) { x.Name = name; r.resin(c, x) })
	}
	for _, name := range Names(file.Mixes) {
		c := file.Mixes[name]
		add(e, "mixes", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Mixes, func(r *reader, x *Mix) { x.Name = name; r.mix(c, x) })
	}
	for _, name := range Names(file.Boards) {
		c := file.Boards[name]
		add(e, "boards", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Boards, func(r *reader, x *Board) { x.Name = name; r.board(c, x) })
	}
	for _, name := range Names(file.Foams) {
		c := file.Foams[name]
		add(e, "foams", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Foams, func(r *reader, x *Foam) { x.Name = name; r.foam(c, x) })
	}
	for _, name := range Names(file.Consumables) {
		c := file.Consumables[name]
		add(e, "consumables", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Consumables, func(r *reader, x *Consumable) { x.Name = name; r.consumable(c, x) })
	}
	for _, name := range Names(file.Tubes) {
		c := file.Tubes[name]
		add(e, "tubes", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Tubes, func(r *reader, x *Tube) { x.Name = name; r.tube(c, x) })
	}
	for _, name := range Names(file.Machines) {
		c := file.Machines[name]
		add(e, "machines", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Machines, func(r *reader, x *Machine) { x.Name = name; r.machine(c, x) })
	}
	for _, name := range Names(file.Screws) {
		c := file.Screws[name]
		add(e, "screws", name, c.Like, e.pedigree.or(c.Origin, c.Source), out.Screws, func(r *reader, x *Screw) { x.Name = name; r.screw(c, x) })
	}
	return out, e.found
}

// ChangeResin returns card with the values that changes gives. They stand at path in
// places and come from the data sheet unless they say otherwise. A value with a
// fault leaves the card's own.
func ChangeResin(card Resin, changes ResinCard, places typed.Places, path string, bare Bare) (Resin, []finding.Finding) {
	r := &reader{places: places, path: path, bare: bare, pedigree: pedigree{origin: string(DataSheet)}.or(changes.Origin, changes.Source)}
	r.resin(changes, &card)
	return card, r.found
}

type extender struct {
	places   typed.Places
	path     string
	pedigree pedigree
	bare     Bare
	found    []finding.Finding
}

// add reads one card over its namesake or the card it is like.
func add[T any](e *extender, kind, name string, like typed.Text, p pedigree, cards map[string]T, read func(*reader, *T)) {
	path := kind + "." + name
	if e.path != "" {
		path = e.path + "." + path
	}
	r := &reader{places: e.places, path: path, pedigree: p, bare: e.bare}
	from := name
	if like != "" {
		from = string(like)
		if _, err := find(kind, cards, from); err != nil {
			r.say(missingValue, "like", "%s.", err.Error()).Remedy = err.Remedy()
			e.found = append(e.found, r.found...)
			return // what else is missing follows from this
		}
	}
	card := cards[from]
	read(r, &card)
	if len(r.found) == 0 {
		cards[name] = card
	}
	e.found = append(e.found, r.found...)
}

// Names returns the names of cards in alphabetical order.
func Names[T any](cards map[string]T) []string { return slices.Sorted(maps.Keys(cards)) }

// A NotFound is a name that is not on the shelf.
type NotFound struct {
	Kind    string // resins, mixes ...
	Name    string
	Suggest string   // nearest name, or ""
	Names   []string // all there are
}

// Error says what is missing.
func (e *NotFound) Error() string {
	return fmt.Sprintf("%q is not among the %s of the shelf", e.Name, e.Kind)
}

// Remedy suggests the nearest name, or lists them all.
func (e *NotFound) Remedy() string {
	if e.Suggest != "" {
		return "did you mean " + e.Suggest + "?"
	}
	return "the shelf has " + strings.Join(e.Names, "; ")
}

func find[T any](kind string, cards map[string]T, name string) (T, *NotFound) {
	if c, ok := cards[name]; ok {
		return c, nil
	}
	names := Names(cards)
	var none T
	return none, &NotFound{kind, name, typed.Suggest(name, names), names}
}

// Resin returns a resin by name.
func (s Shelf) Resin(name string) (Resin, *NotFound) { return find("resins", s.Resins, name) }

// Mix returns a mix by name.
func (s Shelf) Mix(name string) (Mix, *NotFound) { return find("mixes", s.Mixes, name) }

// Board returns a board by name.
func (s Shelf) Board(name string) (Board, *NotFound) { return find("boards", s.Boards, name) }

// Foam returns a foam by name.
func (s Shelf) Foam(name string) (Foam, *NotFound) { return find("foams", s.Foams, name) }

// Consumable returns a consumable by name.
func (s Shelf) Consumable(name string) (Consumable, *NotFound) {
	return find("consumables", s.Consumables, name)
}

// Tube returns a tube by name.
func (s Shelf) Tube(name string) (Tube, *NotFound) { return find("tubes", s.Tubes, name) }

// Screw returns a screw by name.
func (s Shelf) Screw(name string) (Screw, *NotFound) { return find("screws", s.Screws, name) }

// Machine returns a machine by name.
func (s Shelf) Machine(name string) (Machine, *NotFound) { return find("machines", s.Machines, name) }
