package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/invopop/jsonschema"

	"pourwright/internal/finding"
	"pourwright/internal/job"
	"pourwright/internal/material"
	"pourwright/internal/plan"
	"pourwright/internal/read"
	"pourwright/internal/read/heightmap"
	"pourwright/internal/read/svg"
	"pourwright/internal/render/term"
	"pourwright/internal/typed"
)

type planCmd struct {
	pieceArg
	JSON bool `help:"Print the plan as JSON; schema: docs/plan.schema.json."`
}

// Run prints the plan.
func (c *planCmd) Run(con *console) error {
	p, err := c.compute(con)
	if err != nil {
		return err
	}
	if c.JSON {
		if err := writeJSON(con.out, p); err != nil {
			return err
		}
		return stopIf(p)
	}
	if err := term.Render(con.out, p); err != nil {
		return err
	}
	return stopIf(p)
}

// writeJSON prints v indented, with a newline at the end.
func writeJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

type inspectCmd struct {
	File       string  `arg:"" help:"An SVG drawing, or a cutting program (.nc, .ngc, .tap ...)." type:"path"`
	JSON       bool    `help:"Print JSON."`
	Resolution float64 `help:"Units per inch where the drawing states none." default:"96"`
	ChordError float64 `help:"Greatest distance between a curve and its chords, mm." default:"0.05"`
}

// Run lists the outlines of a drawing, or what a cutting program does.
func (c *inspectCmd) Run(con *console) error {
	if isProgram(c.File) {
		return c.program(con)
	}
	if ext := strings.ToLower(filepath.Ext(c.File)); ext == ".yaml" || ext == ".yml" {
		return &fileError{c.File, errors.New("is a document, no drawing; plan reads it")}
	}
	data, err := readFile(c.File, read.MaxDrawing)
	if err != nil {
		return err
	}
	in, err := svg.Inspect(filepath.Base(c.File), data, svg.Options{Resolution: c.Resolution, ChordError: c.ChordError})
	if err != nil {
		return err
	}
	if c.JSON {
		return writeJSON(con.out, in)
	}
	return in.Text(con.out)
}

type schemaCmd struct {
	Of string `arg:"" enum:"plan" default:"plan" help:"What to print the schema of: plan. Those of a piece and a shelf stand in docs/."`
}

// Run prints the plan's schema.
func (c *schemaCmd) Run(con *console) error {
	r := jsonschema.Reflector{ExpandedStruct: true, Anonymous: true}
	s := r.Reflect(&plan.Plan{})
	s.Title = "A plan of pourwright"
	s.Description = "Keys end in their unit: _mm, _mm2, _l, _kg, _h, _c. Same input, same bytes."
	return writeJSON(con.out, s)
}

type rulesCmd struct{}

// Run lists every rule.
func (c *rulesCmd) Run(con *console) error {
	rules := allRules()
	fmt.Fprintf(con.out, "# Findings\n\nWritten by `pourwright rules`.\n\n| code | severity | guards that | remedy |\n|---|---|---|---|\n")
	for _, r := range rules {
		fmt.Fprintf(con.out, "| %s | %s | %s | %s |\n", r.Code, r.Severity, r.Title, strings.ReplaceAll(r.Remedy, "|", "\\|"))
	}
	return nil
}

// allRules returns every rule of the program, by code.
func allRules() []finding.Rule {
	rules := slices.Concat(typed.Rules(), job.Rules(), material.Rules(), read.Rules(), svg.Rules(), heightmap.Rules(), plan.Rules())
	slices.SortFunc(rules, func(a, b finding.Rule) int { return strings.Compare(a.Code, b.Code) })
	return rules
}

type shelfCmd struct {
	Show shelfShowCmd `cmd:"" default:"withargs" help:"List the cards, or print one."`
	Fit  fitCmd       `cmd:"" help:"Estimate a resin's cure from its data sheet or a test pour."`
}

type shelfShowCmd struct {
	Name  string   `arg:"" optional:"" help:"A card; all names when left out."`
	Shelf []string `help:"A shelf file of your own." type:"path" placeholder:"FILE"`
}

// Run lists the shelf, or prints one card.
func (c *shelfShowCmd) Run(con *console) error {
	shelf, err := openShelf(c.Shelf)
	if err != nil {
		return err
	}
	groups := []struct {
		title string
		names []string
		card  func(string) any
	}{
		{"resins", material.Names(shelf.Resins), func(n string) any { return shelf.Resins[n] }},
		{"mixes", material.Names(shelf.Mixes), func(n string) any { return shelf.Mixes[n] }},
		{"boards", material.Names(shelf.Boards), func(n string) any { return shelf.Boards[n] }},
		{"foams", material.Names(shelf.Foams), func(n string) any { return shelf.Foams[n] }},
		{"consumables", material.Names(shelf.Consumables), func(n string) any { return shelf.Consumables[n] }},
		{"tubes", material.Names(shelf.Tubes), func(n string) any { return shelf.Tubes[n] }},
		{"machines", material.Names(shelf.Machines), func(n string) any { return shelf.Machines[n] }},
	}
	for _, g := range groups {
		if c.Name == "" {
			fmt.Fprintf(con.out, "%s\n", g.title)
			for _, n := range g.names {
				fmt.Fprintf(con.out, "  %s\n", n)
			}
		} else if slices.Contains(g.names, c.Name) {
			return writeJSON(con.out, g.card(c.Name))
		}
	}
	if c.Name != "" {
		return fmt.Errorf("no card named %q on the shelf; pourwright shelf lists them", c.Name)
	}
	return nil
}

type versionCmd struct{}

// Run prints the version.
func (versionCmd) Run(con *console) error {
	_, err := fmt.Fprintf(con.out, "pourwright %s\n", Version)
	return err
}
