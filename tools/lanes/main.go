// Command lanes writes the vector instructions of the cure's inner loops, AVX2, eight
// cells at a time. They do what the loops written in Go beside them do, in the same order
// and without fused operations, so that both round alike.
package main

import (
	. "github.com/mmcloughlin/avo/build"
	. "github.com/mmcloughlin/avo/operand"
	. "github.com/mmcloughlin/avo/reg"
)

func main() {
	ConstraintExpr("amd64")
	react()
	inflow()
	back()
	down()
	up()
	factorLine("factorYWide", false)
	factorLine("factorZWide", true)
	factorX()
	along()
	correct()
	Generate()
}

// f32 is the operand of eight numbers at an array's cell.
func f32(array, cell Register) Mem { return Mem{Base: array, Index: cell, Scale: 4} }

func array(name string) Register { return Load(Param(name), GP64()) }

// spread fills a vector with a parameter.
func spread(name string) VecVirtual {
	addr, err := Param(name).Resolve()
	if err != nil {
		panic(err)
	}
	v := YMM()
	VBROADCASTSS(addr.Addr, v)
	return v
}

func zero() VecVirtual {
	v := YMM()
	VXORPS(v, v, v)
	return v
}

// eachVector runs body for cells 0, 8, ... below n.
func eachVector(body func(cell Register)) {
	n := Load(Param("n"), GP64())
	cell := GP64()
	XORQ(cell, cell)
	Label("loop")
	body(cell)
	ADDQ(Imm(8), cell)
	CMPQ(cell, n)
	JLT(LabelRef("loop"))
	VZEROUPPER()
	RET()
}

func text(name, params string) {
	TEXT(name, NOSPLIT, "func("+params+")")
	Pragma("noescape")
}

// expected leaves max(0, rate + w (rate - before)) in rate.
func expected(rate, before, w, none VecVirtual) {
	VSUBPS(before, rate, before)
	VMULPS(w, before, before)
	VADDPS(before, rate, rate)
	VMAXPS(none, rate, rate)
}

func react() {
	text("reactWide", "flow, mass, rate, before *float32, n int, w, heat float32")
	flow, mass, rate, before := array("flow"), array("mass"), array("rate"), array("before")
	w, heat, none := spread("w"), spread("heat"), zero()
	eachVector(func(cell Register) {
		d, b := YMM(), YMM()
		VMOVUPS(f32(rate, cell), d)
		VMOVUPS(f32(before, cell), b)
		expected(d, b, w, none)
		VMULPS(f32(mass, cell), heat, b)
		VMULPS(d, b, d)
		VMOVUPS(d, f32(flow, cell))
	})
}

func inflow() {
	text("inflowWide", "t, gx, gy, gz, film, p, e, flow *float32, nx, plane, n int, dt, air float32")
	t, gx, gy, gz, film := array("t"), array("gx"), array("gy"), array("gz"), array("film")
	p, e, flow := array("p"), array("e"), array("flow")
	under, aft, over, fore := array("nx"), array("plane"), GP64(), GP64()
	XORQ(over, over)
	SUBQ(under, over)
	XORQ(fore, fore)
	SUBQ(aft, fore)
	dt, air := spread("dt"), spread("air")
	eachVector(func(cell Register) {
		v, q, x := YMM(), YMM(), YMM()
		VMOVUPS(f32(t, cell), v)
		VMOVUPS(f32(flow, cell), q)
		from := func(next, g Mem) {
			VMOVUPS(next, x)
			VSUBPS(v, x, x)
			VMULPS(g, x, x)
			VADDPS(x, q, q)
		}
		from(f32(t, cell).Offset(4), f32(gx, cell))
		from(f32(t, cell).Offset(-4), f32(gx, cell).Offset(-4))
		from(f32(t, under), f32(gz, cell))
		from(f32(t, over), f32(gz, over))
		from(f32(t, aft), f32(gy, cell))
		from(f32(t, fore), f32(gy, fore))
		VSUBPS(v, air, x)
		VMULPS(f32(film, cell), x, x)
		VADDPS(x, q, q)
		VMULPS(dt, q, q)
		VMULPS(f32(p, cell), q, q)
		VMOVUPS(f32(flow, fore), x)
		VMULPS(f32(e, cell), x, x)
		VADDPS(x, q, q)
		VMOVUPS(q, f32(flow, cell))
		for _, r := range []Register{under, aft, over, fore} {
			ADDQ(Imm(8), r)
		}
	})
}

func back() {
	text("backWide", "flow, after, f *float32, n int")
	flow, after, f := array("flow"), array("after"), array("f")
	eachVector(func(cell Register) {
		v := YMM()
		VMOVUPS(f32(f, cell), v)
		VMULPS(f32(after, cell), v, v)
		VADDPS(f32(flow, cell), v, v)
		VMOVUPS(v, f32(flow, cell))
	})
}

func down() {
	text("downWide", "flow, over, swept, p, e *float32, n int")
	flow, over, swept, p, e := array("flow"), array("over"), array("swept"), array("p"), array("e")
	eachVector(func(cell Register) {
		v, x := YMM(), YMM()
		VMOVUPS(f32(p, cell), v)
		VMULPS(f32(swept, cell), v, v)
		VMOVUPS(f32(e, cell), x)
		VMULPS(f32(over, cell), x, x)
		VADDPS(x, v, v)
		VMOVUPS(v, f32(flow, cell))
	})
}

func up() {
	text("upWide", "flow, under, f, was, now *float32, n int")
	flow, under, f, was, now := array("flow"), array("under"), array("f"), array("was"), array("now")
	eachVector(func(cell Register) {
		v := YMM()
		VMOVUPS(f32(f, cell), v)
		VMULPS(f32(under, cell), v, v)
		VADDPS(f32(flow, cell), v, v)
		VMOVUPS(v, f32(flow, cell))
		VADDPS(f32(was, cell), v, v)
		VMOVUPS(v, f32(now, cell))
	})
}

// ones returns a vector of ones.
func ones() VecVirtual {
	v := YMM()
	VPCMPEQD(v, v, v)
	VPSRLD(Imm(25), v, v)
	VPSLLD(Imm(23), v, v)
	return v
}

// positive leaves all bits in mask where v is over none.
func positive(v, none, mask VecVirtual) { VCMPPS(Imm(0x1e), none, v, mask) }

func factorLine(name string, upright bool) {
	film := ""
	if upright {
		film = "film, "
	}
	text(name, "cap, before, after, "+film+"fBefore, p, e, f *float32, n int, half float32")
	cap, before, after, fBefore, p, e, f := array("cap"), array("before"), array("after"), array("fBefore"), array("p"), array("e"), array("f")
	var airy Register
	if upright {
		airy = array("film")
	}
	half, one, none := spread("half"), ones(), zero()
	eachVector(func(cell Register) {
		c, a, b, sum, mask := YMM(), YMM(), YMM(), YMM(), YMM()
		VMOVUPS(f32(cap, cell), c)
		positive(c, none, mask)
		VMOVUPS(f32(before, cell), a)
		VMOVUPS(f32(after, cell), b)
		VADDPS(b, a, sum)
		if upright {
			VADDPS(f32(airy, cell), sum, sum)
		}
		VMULPS(half, a, a)
		VMULPS(half, sum, sum)
		VADDPS(sum, c, sum)
		x := YMM()
		VMULPS(f32(fBefore, cell), a, x)
		VSUBPS(x, sum, sum)
		VDIVPS(sum, one, sum)
		VANDPS(mask, sum, sum)
		VMULPS(sum, a, a)
		VMOVUPS(a, f32(e, cell))
		VMULPS(half, b, b)
		VMULPS(sum, b, b)
		VMOVUPS(b, f32(f, cell))
		if upright {
			VMULPS(c, sum, sum)
		}
		VMOVUPS(sum, f32(p, cell))
	})
}

func factorX() {
	text("factorXWide", "cap, right, pe, f *float32, n int, half float32")
	cap, right, pe, f := array("cap"), array("right"), array("pe"), array("f")
	half, one, none := spread("half"), ones(), zero()
	left, fBefore := zero(), zero()
	eachVector(func(cell Register) {
		c, r, a, sum, x, mask := YMM(), YMM(), YMM(), YMM(), YMM(), YMM()
		VMOVUPS(f32(cap, cell), c)
		positive(c, none, mask)
		VMOVUPS(f32(right, cell), r)
		VADDPS(r, left, sum)
		VMULPS(half, left, a)
		VMULPS(half, sum, sum)
		VADDPS(sum, c, sum)
		VMULPS(fBefore, a, x)
		VSUBPS(x, sum, sum)
		VDIVPS(sum, one, sum)
		VANDPS(mask, sum, sum)
		VMULPS(sum, c, c)
		VMOVUPS(c, Mem{Base: pe, Index: cell, Scale: 8})
		VMULPS(sum, a, a)
		VMOVUPS(a, Mem{Base: pe, Index: cell, Scale: 8, Disp: 32})
		VMULPS(half, r, x)
		VMULPS(sum, x, fBefore)
		VMOVUPS(fBefore, f32(f, cell))
		VANDPS(mask, r, left)
	})
}
