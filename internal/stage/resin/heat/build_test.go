package heat

import (
	"math"
	"testing"
)

// The quick way of building cells must give what going through every square gives.
func TestWholeCellsAreAsSquares(t *testing.T) {
	c := trial(2)
	c.Pours = []Pour{{TopMM: 16, TempC: 22}}
	for _, under := range []*Solid{nil, {25, 1450, 0.035}} {
		c.Below = under
		b := newBody(c, 4)
		o := Options{DXMM: 10}.orDefaults(c)
		z := b.layers(o, []float64{16})
		quick, err := b.build(o, z, 16)
		if err != nil {
			t.Fatal(err)
		}
		b.slow = true
		slow, _ := b.build(o, z, 16)
		b.slow = false
		for name, pair := range map[string][2][]float32{"cap": {quick.cap, slow.cap}, "mass": {quick.mass, slow.mass}, "gx": {quick.gx, slow.gx}, "gy": {quick.gy, slow.gy}, "gz": {quick.gz, slow.gz},
			"up": {quick.face[0], slow.face[0]}, "down": {quick.face[1], slow.face[1]}, "beside": {quick.face[2], slow.face[2]}, "path": {quick.path[1], slow.path[1]}} {
			for at := range pair[0] {
				if p, q := float64(pair[0][at]), float64(pair[1][at]); math.Abs(p-q) > 1e-5*(math.Abs(q)+1e-9) {
					t.Fatalf("%s of cell %d: %g quick, %g by squares", name, at, p, q)
				}
			}
		}
	}
}

// The poured mass is the hollow's volume, and a ball spread over brims is one spread over
// every square.
func TestMassAndUnderside(t *testing.T) {
	c := trial(5)
	b := newBody(c, 4)
	g, err := b.build(Options{DXMM: 20}.orDefaults(c), b.layers(Options{DXMM: 20}.orDefaults(c), nil), 0)
	if err != nil {
		t.Fatal(err)
	}
	want, got := 0.0, 0.0
	for _, d := range c.DeepMM {
		want += d * c.StepMM * c.StepMM * 1e-9 * c.Pour.RhoKGM3
	}
	for _, m := range g.mass {
		got += float64(m)
	}
	if math.Abs(got-want) > 1e-4*want {
		t.Errorf("poured %.4f kg, the hollow holds %.4f", got, want)
	}
	for j := 0; j < b.ny; j += 3 {
		for i := 1; i < b.nx; i += 7 {
			if at := j*b.nx + i; b.under[at] > 0 && math.Abs(b.under[at]-b.underSlow(i, j)) > 1e-9 {
				t.Fatalf("underside at %d, %d: %.3f, by all squares %.3f", i, j, b.under[at], b.underSlow(i, j))
			}
		}
	}
}

func (b *body) underSlow(i, j int) float64 {
	u := b.deep[j*b.nx+i] + b.c.BodyMM
	for jj := max(0, j-8); jj < min(b.ny, j+9); jj++ {
		for ii := max(0, i-8); ii < min(b.nx, i+9); ii++ {
			d := math.Hypot(float64(ii-i), float64(jj-j)) * b.c.StepMM
			if d <= b.c.BodyMM && b.deep[jj*b.nx+ii] > 0 {
				u = math.Max(u, b.deep[jj*b.nx+ii]+math.Sqrt(b.c.BodyMM*b.c.BodyMM-d*d))
			}
		}
	}
	return u
}
