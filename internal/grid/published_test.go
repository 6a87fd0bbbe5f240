package grid

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"pourwright/internal/published"
)

type volcanoLevel struct {
	Level   float64
	FourTri struct {
		Area   float64
		Volume float64 `json:"volume_above"`
	} `json:"four_tri"`
	D3 struct {
		Area            float64
		Polygons, Holes int
		Valid           bool
	} `json:"d3_contour"`
}

type volcanoRef struct {
	Volume float64 `json:"bilinear_volume_above_0"`
	Levels []volcanoLevel
	Stack  struct {
		Levels []float64
		Thick  float64 `json:"layer_thickness"`
		Volume float64 `json:"volume_manifold_union"`
	} `json:"stepped_stack"`
}

func load(t *testing.T, name string, v any) {
	t.Helper()
	data, err := os.ReadFile(published.Data(t, "heightmap", name))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, v); err != nil {
		t.Fatal(err)
	}
}

func volcano(t *testing.T) (Field, volcanoRef) {
	t.Helper()
	var grid struct {
		Width, Height int
		Values        []float64
	}
	var ref volcanoRef
	load(t, "volcano.json", &grid)
	load(t, "volcano_ref.json", &ref)
	f, err := New(grid.Width, grid.Height, 10, 10)
	if err != nil {
		t.Fatal(err)
	}
	for i, z := range grid.Values {
		f.Set(i%grid.Width, grid.Height-1-i/grid.Width, z)
	}
	return f, ref
}

// Areas in the reference are printed to 1e-4 m2, volumes to 1e-3 or 1e-4 m3; sums of
// 5160 cells agree to a few units more in the last place.
func TestPublishedVolcanoLevels(t *testing.T) {
	f, ref := volcano(t)
	check := func(name string, ours, theirs, tol float64, unit, place string) published.Check {
		return published.Check{Room: "grid", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "maunga-whau", Place: place}
	}
	published.Run(t, check("Maunga Whau, volume of the bilinear surface", f.Volume(), ref.Volume, 0.5, "m3", "whole grid"))
	for _, l := range ref.Levels {
		area, volume := f.Above(l.Level)
		published.Run(t,
			check(fmt.Sprintf("Maunga Whau, area above %.1f m", l.Level), area, l.FourTri.Area, 1e-4, "m2", "four triangles about the cell mean"),
			check(fmt.Sprintf("Maunga Whau, volume above %.1f m", l.Level), volume, l.FourTri.Volume, 1e-3, "m3", "four triangles about the cell mean"))
	}
}

// joinedSaddles returns the area that we have and d3-contour has not: it parts the
// high corners of every saddle, we join them where the mean is up. In such a cell
// the two low corners lose their triangles instead of the two high ones keeping
// theirs.
func joinedSaddles(f Field, level float64) float64 {
	sum := 0.0
	for r := range f.Rows - 1 {
		for c := range f.Cols - 1 {
			z := [4]float64{f.At(c, r) - level, f.At(c+1, r) - level, f.At(c+1, r+1) - level, f.At(c, r+1) - level}
			if (z[0] >= 0) != (z[2] >= 0) || (z[1] >= 0) != (z[3] >= 0) || (z[0] >= 0) == (z[1] >= 0) || z[0]+z[1]+z[2]+z[3] < 0 {
				continue
			}
			cell := 1.0
			for i := range 4 { // each corner's triangle is out of one version or in the other
				a, b, d := z[i], z[(i+1)%4], z[(i+3)%4]
				cell -= a / (a - b) * (a / (a - d)) / 2
			}
			sum += cell * f.DX * f.DY
		}
	}
	return sum
}

// Contours that meet no frame compare with d3-contour, but for its saddles.
func TestPublishedVolcanoContours(t *testing.T) {
	f, ref := volcano(t)
	for _, l := range ref.Levels {
		if !l.D3.Valid {
			continue
		}
		region := f.Contours(l.Level)[0]
		published.Run(t, published.Check{Room: "grid", Name: fmt.Sprintf("Maunga Whau, area inside the contour of %.1f m, saddles parted", l.Level),
			Ours: region.Area() - joinedSaddles(f, l.Level), Theirs: l.D3.Area, Unit: "m2", Tol: 1e-3, Source: "maunga-whau", Place: "d3-contour, levels that meet no frame"})
	}
}

func TestPublishedVolcanoStack(t *testing.T) {
	f, ref := volcano(t)
	sum := 0.0
	for i, r := range f.Contours(ref.Stack.Levels...) {
		sum += (r.Area() - joinedSaddles(f, ref.Stack.Levels[i])) * ref.Stack.Thick
	}
	published.Run(t, published.Check{Room: "grid", Name: "Maunga Whau, stack of seven contours 10 m thick, saddles parted", Ours: sum, Theirs: ref.Stack.Volume,
		Unit: "m3", Tol: 0.1, Source: "maunga-whau", Place: "union of the extruded contours by a solid modeller"})
}
