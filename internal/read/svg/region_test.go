package svg

import "testing"

func TestRegionsFollowTheFillRule(t *testing.T) {
	for _, tt := range []struct {
		name, body string
		area       float64
	}{
		{"bow tie", `<path id="p" d="M10 10L50 50V10L10 50Z"/>`, 800},
		{"hole by even-odd", `<path id="p" fill-rule="evenodd" d="M0 0H90V90H0ZM10 10H50V50H10Z"/>`, 6500},
		{"no hole by nonzero", `<path id="p" d="M0 0H90V90H0ZM10 10H50V50H10Z"/>`, 8100},
		{"hole by turning round", `<path id="p" d="M0 0H90V90H0ZM10 10V50H50V10Z"/>`, 6500},
	} {
		d, o := readOne(t, page100(tt.body), Options{})
		near(t, tt.name+", stated", o.AreaMM2, tt.area, 1e-3)
		near(t, tt.name+", on the page", d.Region(d.Outlines).Area(), tt.area, 1e-3)
		near(t, tt.name+", on the piece", d.PieceRegion(d.Outlines).Area(), tt.area, 1e-3)
	}
}

func TestPieceRegionTurnsThePageOver(t *testing.T) {
	d, _, err := Read("two.svg", []byte(page100(`<g id="both"><rect width="20" height="10"/><rect x="10" width="20" height="10"/></g>`)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := d.PieceRegion(d.Select("both"))
	b := r.Box()
	near(t, "area of both", r.Area(), 300, 1e-3)
	near(t, "left", b.Min.X, 0, 1e-3)
	near(t, "near", b.Min.Y, 90, 1e-3)
	near(t, "right", b.Max.X, 30, 1e-3)
	near(t, "far", b.Max.Y, 100, 1e-3)
	if len(r) != 1 || r[0].Outer.Area() <= 0 {
		t.Errorf("region %v", r)
	}
	if d.PieceRegion(nil) != nil || d.Region(nil) != nil {
		t.Error("nothing selected is not nothing")
	}
}
