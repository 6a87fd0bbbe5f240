// Command generate writes the invented crater of the crater table: a closed basin
// with a ledge round part of its wall and a small rise off its middle, as a text
// grid of depths below the show face.
//
//	go run ./examples/crater-table/generate > examples/crater-table/crater.txt
//
// The same seed gives the same bytes.
package main

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"os"
)

// The grid: nodes a side, mm between them, and the seed of its roughness.
const (
	nodes = 141
	cell  = 4.0
	seed  = 20270301
)

func main() {
	if err := write(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

// write prints the grid, the far row first.
func write(to io.Writer) error {
	w := bufio.NewWriter(to)
	fmt.Fprint(w, `# A crater for a table top: depths below the show face, far row first.
# Invented for this example by a generator with a seed; no real place.
`)
	fmt.Fprintf(w, "cell: %g mm\nunit: mm\nvalues: depth\n", cell)
	middle := cell * (nodes - 1) / 2
	for row := range nodes {
		y := cell*float64(nodes-1-row) - middle
		for col := range nodes {
			if col > 0 {
				fmt.Fprint(w, " ")
			}
			fmt.Fprintf(w, "%.1f", depth(cell*float64(col)-middle, y))
		}
		fmt.Fprintln(w)
	}
	return w.Flush()
}

// depth returns the depth at x, y from the middle, all mm: walls from the rim down
// to a floor 46 mm deep, a ledge at 15 mm where the wall is wide, and the rise.
func depth(x, y float64) float64 {
	r, angle := math.Hypot(x, y), math.Atan2(y, x)
	rho := r / rim(angle)
	if rho >= 1 {
		return 0
	}
	inner := 0.66 - 0.17*math.Cos(angle-0.9) - 0.05*math.Cos(3*angle)
	d := 15*ramp(1, 0.86, rho) + 31*ramp(inner, inner-0.2, rho)
	d -= 27 * bell(math.Hypot(x-34, y+22)/46)
	d += 1.8 * ramp(1, 0.7, rho) * roughness(x/58, y/58)
	return math.Max(d, 0)
}

// rim returns how far the rim lies from the middle in a direction, mm: no two
// quarters alike, so that a mirrored crater is not the same.
func rim(angle float64) float64 {
	return 232 + 11*math.Cos(2*angle-0.6) + 8*math.Cos(3*angle+1.1) + 4*math.Cos(7*angle)
}

// ramp rises smoothly from 0 at from to 1 at to.
func ramp(from, to, v float64) float64 {
	t := math.Min(1, math.Max(0, (v-from)/(to-from)))
	return t * t * (3 - 2*t)
}

// bell falls smoothly from 1 at 0 to 0 at 1.
func bell(v float64) float64 { return ramp(1, 0, v) }

// roughness is smooth noise between -1 and 1: random heights at whole numbers,
// blended in between.
func roughness(x, y float64) float64 {
	x0, y0 := math.Floor(x), math.Floor(y)
	u, v := ramp(0, 1, x-x0), ramp(0, 1, y-y0)
	at := func(dx, dy float64) float64 { return random(int64(x0+dx), int64(y0+dy)) }
	low := at(0, 0)*(1-u) + at(1, 0)*u
	high := at(0, 1)*(1-u) + at(1, 1)*u
	return low*(1-v) + high*v
}

// random returns a number between -1 and 1 that depends on x, y and the seed only,
// mixed by multiplying and shifting.
func random(x, y int64) float64 {
	h := uint64(x)*0x9e3779b97f4a7c15 ^ uint64(y)*0xc2b2ae3d27d4eb4f ^ seed
	h ^= h >> 33
	h *= 0xff51afd7ed558ccd
	h ^= h >> 33
	h *= 0xc4ceb9fe1a85ec53
	h ^= h >> 33
	return float64(h>>11)/(1<<52) - 1
}
