package toolpath

import (
	"math"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/view"
)

// blob returns a wavy closed ring of n corners round c.
func blob(c geom.Point, radius, wave float64, n int) geom.Ring {
	r := make(geom.Ring, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := radius + wave*math.Sin(5*a) + wave/3*math.Cos(11*a)
		r[i] = c.Add(geom.Point{X: d * math.Cos(a), Y: d * math.Sin(a)})
	}
	return r
}

func hole(c geom.Point, radius float64) geom.Ring { return blob(c, radius, 0, 64).Reversed() }

func formPart(id string, rings ...geom.Ring) Part {
	return Part{ID: id, Region: view.Of[view.Form](geom.Build(rings, geom.NonZero))}
}

func router() Machine {
	return Machine{Router: true, BedX: 600, BedY: 400, Cutter: 6, Flute: 30, Feed: 1500, Plunge: 500, Rapid: 5000, StepDown: 6.35}
}

// exampleSheet is a blob with an island, dowel holes and a part in the island's hole,
// and a plain square with hidden edges.
func exampleSheet() Sheet {
	square := formPart("L2-A", geom.Rect(350, 60, 500, 180).Ring(), hole(geom.Point{X: 400, Y: 120}, 4))
	square.TabsOn = []geom.Ring{{{X: 350, Y: 60}, {X: 500, Y: 60}}, {{X: 500, Y: 60}, {X: 500, Y: 180}}}
	return Sheet{Name: "sheet 1", SizeX: 600, SizeY: 400, Thickness: 24.6, Parts: []Part{
		formPart("L1-A", blob(geom.Point{X: 170, Y: 200}, 130, 8, 700), hole(geom.Point{X: 170, Y: 200}, 60),
			hole(geom.Point{X: 80, Y: 200}, 4), hole(geom.Point{X: 250, Y: 230}, 3)),
		formPart("L1-B", blob(geom.Point{X: 170, Y: 200}, 30, 3, 300)),
		square,
	}}
}

func compute(t *testing.T, in Input) (Program, []finding.Finding) {
	t.Helper()
	r, found := Compute(in)
	if len(r.Programs) != 1 {
		t.Fatalf("%d programs, findings %v", len(r.Programs), found)
	}
	return r.Programs[0], found
}
