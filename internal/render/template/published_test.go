package template

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/published"
)

const perMM = 20 // pixels

// A raster is a page as an independent program draws it.
type raster struct {
	w, h int
	grey []byte
}

// pages rasterises a document, or skips the test where there is no pdftoppm.
func pages(t *testing.T, fs []Figure, paper string) []raster {
	t.Helper()
	tool, err := exec.LookPath("pdftoppm")
	if err != nil {
		t.Skip("pdftoppm (poppler) is not installed: the page cannot be measured")
	}
	dir := t.TempDir()
	var doc bytes.Buffer
	if err := Render(&doc, fs, Options{Paper: paper, Title: "test"}); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(dir, "a.pdf")
	if err := os.WriteFile(name, doc.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(tool, "-r", strconv.FormatFloat(perMM*25.4, 'f', -1, 64), "-gray", name, filepath.Join(dir, "p")).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	found, err := filepath.Glob(filepath.Join(dir, "p-*.pgm"))
	if err != nil || len(found) == 0 {
		t.Fatalf("no pages: %v", err)
	}
	var all []raster
	for _, f := range found {
		all = append(all, readPGM(t, f))
	}
	return all
}

func readPGM(t *testing.T, name string) raster {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var r raster
	var most int
	if _, err := fmt.Sscanf(string(data[:30]), "P5\n%d %d\n%d\n", &r.w, &r.h, &most); err != nil {
		t.Fatal(err)
	}
	r.grey = data[len(data)-r.w*r.h:]
	return r
}

// darks returns the middles of the dark stretches along a row (or column) of the page,
// mm, each weighed by its blackness; across and from to to in mm.
func (r raster) darks(column bool, across, from, to float64) []float64 {
	var out []float64
	sum, mass := 0.0, 0.0
	for k := int(from * perMM); k < int(to*perMM); k++ {
		x, y := k, int(across*perMM)
		if column {
			x, y = y, k
		}
		v := 0.0
		if x >= 0 && x < r.w && y >= 0 && y < r.h {
			v = 255 - float64(r.grey[y*r.w+x])
		}
		if v > 30 {
			sum, mass = sum+v*(float64(k)+0.5), mass+v
		} else if mass > 0 {
			out = append(out, sum/mass/perMM)
			sum, mass = 0, 0
		}
	}
	return out
}

// rectangle is an outline of known size.
func rectangle(w, h float64) Figure {
	return Figure{Name: "T", Title: "test", View: "form", Lines: []Line{{Points: geom.Rect(0, 0, w, h).Ring(), Closed: true}}}
}

// TestPublishedBars measures the bars on a page as another program rasterises it.
func TestPublishedBars(t *testing.T) {
	for paper, size := range paperSizes {
		for k, fig := range []Figure{rectangle(120, 80), rectangle(185, 100)} { // the second lies on its side
			all := pages(t, []Figure{fig}, paper)
			page := all[1]
			w, h := size[0], size[1]
			if k == 1 {
				w, h = h, w
			}
			name := fmt.Sprintf("%s, %s", paper, [2]string{"upright", "lying"}[k])
			check := func(what string, ours, theirs float64, source, place string) {
				published.Run(t, published.Check{Room: "template", Name: what + ", " + name, Ours: ours, Theirs: theirs, Unit: "mm", Tol: 0.1, Source: source, Place: place})
			}
			check("page width", float64(page.w)/perMM, w, "analytic", "paper size")
			for i, want := range []float64{100, 101.6} {
				d := [2]float64{barFirst, barSecond}[i]
				// 3 mm above a bar only the marks of its ends are that long
				across := page.darks(false, h-d-3, edge+5, barStart+110)
				up := page.darks(true, d+3, edge+headRoom-1, edge+headRoom+110)
				if len(across) < 2 || len(up) < 2 {
					t.Fatalf("%s: no bars found: %v, %v", name, across, up)
				}
				key := [2]string{"analytic", "nist-sp811"}[i]
				place := [2]string{"a bar of 100 mm", "app. B.8: 1 in = 25.4 mm"}[i]
				check("bar across of "+measures[i].text, across[1]-across[0], want, key, place)
				check("bar down of "+measures[i].text, up[1]-up[0], want, key, place)
			}
		}
	}
}

// TestPublishedOutline measures a known outline on one tile.
func TestPublishedOutline(t *testing.T) {
	page := pages(t, []Figure{rectangle(120, 80)}, "a4")[1]
	midX, midY := edge+strip+(210-2*edge-strip)/2, edge+headRoom+(297-2*edge-strip-headRoom)/2
	across := page.darks(false, midY, edge+strip+2, 210-edge-2)
	down := page.darks(true, midX, edge+headRoom+2, 297-edge-strip-2)
	if len(across) != 2 || len(down) != 2 {
		t.Fatalf("outline not found: %v, %v", across, down)
	}
	published.Run(t,
		published.Check{Room: "template", Name: "outline of 120 mm across", Ours: across[1] - across[0], Theirs: 120, Unit: "mm", Tol: 0.1, Source: "analytic", Place: "a rectangle of 120 by 80 mm"},
		published.Check{Room: "template", Name: "outline of 80 mm down", Ours: down[1] - down[0], Theirs: 80, Unit: "mm", Tol: 0.1, Source: "analytic", Place: "a rectangle of 120 by 80 mm"})
}

// TestPublishedTaped measures an outline over two tiles laid cross on cross.
func TestPublishedTaped(t *testing.T) {
	fig := rectangle(400, 100)
	g, _ := layOut(fig, "a4")
	if g.nx != 2 || g.ny != 1 || !g.turned {
		t.Fatalf("%d by %d tiles", g.nx, g.ny)
	}
	all := pages(t, []Figure{fig}, "a4")
	left, right := all[1], all[2]
	mid := edge + headRoom + g.h/2
	top := edge + headRoom + Overlap/2 + 2.7 // below the circle of the upper crosses
	l := left.darks(false, mid, edge+strip+2, g.pageW-edge-2)
	r := right.darks(false, mid, edge+strip+2, g.pageW-edge-2)
	lx := left.darks(false, top, g.pageW-edge-Overlap, g.pageW-edge-1)
	rx := right.darks(false, top, edge+strip+1, edge+strip+Overlap)
	if len(l) != 1 || len(r) != 1 || len(lx) != 1 || len(rx) != 1 {
		t.Fatalf("sides %v %v, crosses %v %v", l, r, lx, rx)
	}
	published.Run(t, published.Check{Room: "template", Name: "outline of 400 mm over two tiles laid cross on cross", Ours: lx[0] - l[0] + r[0] - rx[0], Theirs: 400,
		Unit: "mm", Tol: 0.1, Source: "analytic", Place: "a rectangle of 400 by 100 mm"})
}

func TestSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	f := rectangle(500, 300)
	f.Region = geom.Rect(0, 0, 500, 300).Region()
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := Render(w, []Figure{f}, Options{Paper: "letter", Title: "x"}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two prints differ")
	}
}

// TestOddFigures: nothing makes the printer fail, and what is too large says so.
func TestOddFigures(t *testing.T) {
	nan := math.NaN()
	for name, f := range map[string]Figure{
		"nothing":  {},
		"nan":      {Lines: []Line{{Points: geom.Ring{{X: nan}, {Y: nan}}}}},
		"point":    {Lines: []Line{{Points: geom.Ring{{X: 1, Y: 1}}}}},
		"large":    rectangle(50_000, 50_000),
		"larger":   rectangle(1e9, 1e9),
		"letters":  {Name: "\x00\u4e2d\U0001F600", Title: "\xff", View: "form", Notes: []string{"\n\n"}, Lines: rectangle(10, 10).Lines},
		"no lines": {Name: "A", Region: geom.Rect(0, 0, 10, 10).Region()},
	} {
		var b bytes.Buffer
		if err := Render(&b, []Figure{f}, Options{}); err != nil || b.Len() < 1000 {
			t.Errorf("%s: %v, %d bytes", name, err, b.Len())
		}
	}
}

// TestTilesCoverTheFigure: every stretch of the outline lies on a printed tile.
func TestTilesCoverTheFigure(t *testing.T) {
	for _, size := range [][2]float64{{10, 10}, {1219, 610}, {300, 2000}, {164, 229}} {
		for paper := range paperSizes {
			g, ok := layOut(rectangle(size[0], size[1]), paper)
			if !ok {
				t.Fatalf("%v not laid out", size)
			}
			g.Lines[0].sides(func(p, q geom.Point) {
				for k := 0.0; k <= 100; k++ {
					at, on := p.Add(q.Sub(p).Mul(k/100)), false
					for i := range g.printed {
						on = on || g.printed[i] && inside(g.window(i%g.nx, i/g.nx), at)
					}
					if !on {
						t.Fatalf("%v on %s: %v is on no tile", size, paper, at)
					}
				}
			})
		}
	}
}
