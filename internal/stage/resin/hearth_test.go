package resin

import (
	"context"
	"os"
	"testing"
	"time"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// lagoon is an invented basin 1000 x 400 mm of three steps of 24 mm, its mouth to the
// right, poured with a typical deep resin.
func lagoon(t *testing.T, card string) Input {
	t.Helper()
	shelf, err := material.Default()
	if err != nil {
		t.Fatal(err)
	}
	c, missing := shelf.Resin(card)
	if missing != nil {
		t.Fatal("no card")
	}
	in := Input{Card: c, Bucket: 10, Freeboard: 0.4, Room: 20, Length: 1000, Width: 400, Shell: 19, Board: 18, TopArea: 0, Gap: 3}
	step := func(from, to units.Length, r geom.Region) {
		in.Basin = append(in.Basin, Layer{from, to, view.Of[view.Finished](r)})
	}
	step(0, 24, rect(60, 60, 1000, 340))
	step(24, 48, rect(200, 100, 1000, 300))
	step(48, 72, rect(400, 130, 1000, 270))
	in.Dams = []Dam{{Side: view.Right, From: 60, Width: 280, Depth: 72}}
	v, d := units.Volume(0), units.Length(0)
	for i := len(in.Basin) - 1; i >= 0; i-- {
		l := in.Basin[i]
		d += l.To - l.From
		v += units.Area(l.Region.Area()).Times(l.To - l.From)
		in.Fill = append(in.Fill, FillPoint{d, v})
	}
	for i := range 5 {
		in.Hours[i] = []Span{{8, 17}}
	}
	return in
}

func TestTime(t *testing.T) {
	if os.Getenv("TIMES") == "" {
		t.Skip()
	}
	in := lagoon(t, "deep pour 50 mm")
	start := time.Now()
	r, found := Run(context.Background(), in, func(s float64, d string) { t.Logf("%v %.2f %s", time.Since(start), s, d) })
	t.Logf("%v %+v", time.Since(start), r.Cure)
	for _, a := range r.Alternatives {
		t.Log(a.Sentence)
	}
	for _, f := range found {
		t.Log(f.Code, f.Text)
	}
}
