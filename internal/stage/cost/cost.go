package cost

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// Input is what is needed.
type Input struct {
	Needs []Need
}

// A Need is a quantity of one material.
type Need struct {
	Name     string
	Room     string
	Quantity float64 // in Unit
	Unit     string  // l, kg, sheet, bar, cartridge
	Packages []material.Package
}

// Result is what to buy.
type Result struct {
	Lines    []Line  `json:"lines"`
	Total    float64 `json:"total"` // of the lines that have a price
	Unpriced int     `json:"unpriced"`
}

// A Line is one material in whole packages. Price is 0 where a package to buy has
// none.
type Line struct {
	Name   string  `json:"name"`
	Room   string  `json:"room"`
	Need   float64 `json:"need"`
	Unit   string  `json:"unit"`
	Buy    []Buy   `json:"buy"` // largest size first
	Bought float64 `json:"bought"`
	Left   float64 `json:"left"`
	Price  float64 `json:"price"`
	Priced bool    `json:"priced"`
}

// Buy is a number of packages of one size.
type Buy struct {
	Count int     `json:"count"`
	Size  float64 `json:"size"`
}

// mostPackages bounds one line. Chosen: a thousand packages of one material are a
// slip of the pen, not a piece of furniture.
const mostPackages = 1000

// Compute turns the needs into lines of whole packages, in the order given. A need
// that is no number, negative, or beyond a thousand of the largest package is a
// stop finding and its line buys nothing; so does a line without packages.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Lines: []Line{}}
	var found []finding.Finding
	for _, n := range together(in.Needs) {
		line, fs := buy(n)
		found = append(found, fs...)
		r.Lines = append(r.Lines, line)
		if line.Priced {
			r.Total += line.Price
		} else {
			r.Unpriced++
		}
	}
	if r.Unpriced > 0 {
		found = append(found, noPrice.At(finding.Where{}, "No price for %d of %s: %s.", r.Unpriced, units.Count(len(r.Lines), "line", "lines"), unpriced(r.Lines)))
	}
	return r, found
}

// together joins needs of the same name, unit and packages, at the first's place.
func together(needs []Need) []Need {
	var out []Need
	for _, n := range needs {
		same := func(o Need) bool {
			return o.Name == n.Name && o.Unit == n.Unit && slices.Equal(o.Packages, n.Packages)
		}
		i := slices.IndexFunc(out, same)
		if i < 0 {
			out = append(out, n)
			continue
		}
		out[i].Quantity += n.Quantity
		if !slices.Contains(strings.Split(out[i].Room, ", "), n.Room) {
			out[i].Room += ", " + n.Room
		}
	}
	return out
}

func unpriced(lines []Line) string {
	var names []string
	for _, l := range lines {
		if !l.Priced {
			names = append(names, l.Name)
		}
	}
	return strings.Join(names, ", ")
}

// buy chooses the packages of one need.
func buy(n Need) (Line, []finding.Finding) {
	line := Line{Name: n.Name, Room: n.Room, Need: n.Quantity, Unit: n.Unit, Buy: []Buy{}}
	where := finding.Where{Element: n.Name}
	if !(n.Quantity >= 0) || math.IsInf(n.Quantity, 1) {
		line.Need = 0
		return line, []finding.Finding{badNeed.At(where, "The need of %s is %.4g %s, which cannot be bought.", n.Name, n.Quantity, n.Unit)}
	}
	if n.Quantity == 0 {
		line.Priced = true
		return line, nil
	}
	packs, found := usable(n)
	if len(packs) == 0 {
		return line, append(found, noPackage.At(where, "%s: needed are %.4g %s, and no package size is known.", n.Name, n.Quantity, n.Unit))
	}
	if largest := packs[0].size; n.Quantity > largest*mostPackages {
		return line, append(found, badNeed.At(where, "The need of %s is %.4g %s, more than %d packages of %.4g %s.", n.Name, n.Quantity, n.Unit, mostPackages, largest, n.Unit).
			Measured(n.Quantity, largest*mostPackages, n.Unit))
	}
	fill(&line, packs, cheapest(n.Quantity, packs))
	return line, found
}

// A pack is a package that can be bought.
type pack struct {
	size, price float64 // price 0: none stated
}

// usable returns the packages of n in its unit, largest first, one of each size
// (the cheapest that has a price), and what is wrong with the others.
func usable(n Need) ([]pack, []finding.Finding) {
	var packs []pack
	var found []finding.Finding
	for i, p := range n.Packages {
		size, price := p.Quantity.Value, p.Price.Value
		where := finding.Where{Element: fmt.Sprintf("%s, package %d", n.Name, i+1)}
		switch {
		case p.Unit != n.Unit:
			found = append(found, badPackage.At(where, "%s is needed in %s, but a package is given in %q; it is left out.", n.Name, n.Unit, p.Unit))
			continue
		case !(size >= smallest && size <= largestSize):
			found = append(found, badPackage.At(where, "A package of %s holds %.4g %s; it is left out.", n.Name, size, p.Unit))
			continue
		case !(price >= 0 && price <= largestPrice):
			found = append(found, badPackage.At(where, "A package of %s costs %.4g; it counts as having no price.", n.Name, price))
			price = 0
		}
		packs = append(packs, pack{size, price})
	}
	return distinct(packs), found
}

// fill writes the counts of packs into line.
func fill(line *Line, packs []pack, counts []int) {
	line.Priced = true
	for i, c := range counts {
		if c == 0 {
			continue
		}
		line.Buy = append(line.Buy, Buy{Count: c, Size: packs[i].size})
		line.Bought += float64(c) * packs[i].size
		line.Price += float64(c) * packs[i].price
		line.Priced = line.Priced && packs[i].price > 0
	}
	if !line.Priced {
		line.Price = 0
	}
	line.Left = max(0, line.Bought-line.Need)
}
