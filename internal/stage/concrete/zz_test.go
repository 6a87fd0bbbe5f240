package concrete

import ("testing";"math";"math/rand";"pourwright/internal/geom";"pourwright/internal/view")

func blob(r *rand.Rand, cx, cy, rx, ry float64, n int) geom.Region {
	ring := make(geom.Ring, n)
	p1,p2,k1,k2 := r.Float64()*6, r.Float64()*6, float64(3+r.Intn(8)), float64(15+r.Intn(30))
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(n)
		f := 1+.12*math.Sin(k1*a+p1)+.03*math.Sin(k2*a+p2)
		ring[i] = geom.Point{X: cx+rx*math.Cos(a)*f, Y: cy+ry*math.Sin(a)*f}
	}
	return geom.Build([]geom.Ring{ring}, geom.NonZero)
}
func TestZZ(t *testing.T) {
	rr := rand.New(rand.NewSource(1))
	for k := range 8 {
		L,W,H := 1220.0,410.0,430.0
		if k%2==1 { L,W,H = 300,220,150 }
		in := Input{}
		in.Length.MM()
		a := blob(rr, L/2, W/2, L*.38, W*.38, 1000)
		if k%4>=2 { a = blob(rr, L*.7, W/2, L*.38, W*.38, 1000); a = geom.Intersect(a, geom.Rect(0,0,L,W).Region()) }
		b := geom.Intersect(blob(rr, L*.55, W/2, L*.28, W*.25, 1000), a)
		c := geom.Intersect(blob(rr, L*.55, W/2, L*.2, W*.12, 1000), b)
		in = Input{Length: 0}
		_ = in
		m := newMould(Input{Length: ul(L), Width: ul(W), Height: ul(H), Layers: []Layer{{0,25,view.Of[view.Finished](a)},{25,50,view.Of[view.Finished](b)},{50,75,view.Of[view.Finished](c)}}})
		for _, th := range []float64{4, 11.5, 19} {
			ref := m.shell(th, .2)
			for _, h := range []float64{4,2,1,.5} {
				t.Logf("%d t %v h %v rel err %.6f", k, th, h, m.shell(th,h)/ref-1)
			}
		}
	}
}
