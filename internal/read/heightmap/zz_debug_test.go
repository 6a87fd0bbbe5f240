package heightmap
import ("testing";"math";"fmt";"pourwright/internal/geom")
func TestDebug(t *testing.T) {
	type hill struct{ x, y, deep, wide float64 }
	hills := []hill{{47,132.47756958007812,11.5,36.46486663186799},{25.704068392515182,69.07122045528234,13.86328125,82.00687937396287},{22,87.46131228888407,12.421077728271484,30.618552033865438},{72.15736232843847,31.66455078125,38.5827061442059,37.792112572761766}}
	m := mapOf(200, 81, func(x, y float64) float64 { d := 0.0
		for _, h := range hills { d = max(d, h.deep*(1-math.Hypot(x-h.x, y-h.y)/h.wide)) }
		return d })
	_, deepest := m.Depth.Range()
	c := newCutter(m.Depth, StepOptions{Thickness: equal(2, 37.660834471734255/2), Smooth: 2})
	fmt.Println(deepest, c.target, c.padded)
	aim := c.target
	for range 6 {
		s := c.roughShift(aim)
		x := c.cut(s)
		fmt.Println(aim, s, c.rough(s), x.volume)
		for _, r := range c.field.Contours(c.levels(s)...) {
			a := r.Simplify(.025)
			b := geom.Offset(a, 2, .025)
			d := geom.Offset(b, -4, .025)
			e := geom.Offset(d, 2, .025)
			f := geom.Intersect(e, c.frame)
			fmt.Println(s, r.Area(), a.Area(), b.Area(), d.Area(), e.Area(), f.Area())
			if math.Abs(b.Area()-a.Area()) > 3000 || len(e)==0 { fmt.Printf("%d %d\n", len(a), len(a.Rings())) }
		}
		aim += c.target - x.volume
	}
}
