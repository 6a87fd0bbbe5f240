package csv

import (
	"encoding/csv"
	"io"
	"math"
	"strings"
	"testing"

	"pourwright/internal/plan"
	"pourwright/internal/stage/cost"
	"pourwright/internal/stage/form"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
)

func lists() *plan.Plan {
	p := &plan.Plan{}
	p.Form.Panels = []form.Panel{{Name: `long, "odd" side`, Length: 1256.4, Width: 448.2, Thickness: 18.2, Count: 2, Mass: 6.66}}
	p.Knockout.Parts = []knockout.Part{{ID: "L1-A", Layer: 1, Thickness: 24.6, Area: 269924, BoxX: 1162.7, BoxY: 312.8, Mass: units.Mass(math.NaN()), Sheets: 1}}
	p.Cost.Lines = []cost.Line{
		{Name: "=1+1", Room: "resin", Need: 13.87, Unit: "l", Buy: []cost.Buy{{Count: 1, Size: 5}, {Count: 6, Size: 1.5}}, Left: 0.13},
		{Name: "sand", Room: "concrete", Need: 35, Unit: "kg", Buy: []cost.Buy{{Count: 2, Size: 25}}, Left: 15, Price: 18.5, Priced: true},
	}
	return p
}

func TestLists(t *testing.T) {
	for _, c := range []struct {
		name string
		list func(io.Writer, *plan.Plan) error
		want string
	}{
		{"panels", Panels, "panel,count,length_mm,width_mm,thickness_mm,mass_each_kg,bevel\n\"long, \"\"odd\"\" side\",2,1256.4,448.2,18.2,6.66,\n"},
		{"parts", Parts, "part,layer,thickness_mm,sheets,box_x_mm,box_y_mm,area_mm2,mass_kg,mark,on,beside,dowels\nL1-A,1,24.6,1,1162.7,312.8,269924,,,,,0\n"},
		{"shopping", Shopping, "material,room,need,unit,buy,left_over,price\n'=1+1,resin,13.870,l,1 x 5 + 6 x 1.5,0.130,\nsand,concrete,35.000,kg,2 x 25,15.000,18.50\n"},
	} {
		var b strings.Builder
		if err := c.list(&b, lists()); err != nil || b.String() != c.want {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.name, err, b.String(), c.want)
		}
		if rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll(); err != nil || len(rows) < 2 {
			t.Errorf("%s does not read back: %v", c.name, err)
		}
		b.Reset()
		if err := c.list(&b, &plan.Plan{}); err != nil || strings.Count(b.String(), "\n") != 1 {
			t.Errorf("%s of an empty plan: %v %q", c.name, err, b.String())
		}
	}
}
