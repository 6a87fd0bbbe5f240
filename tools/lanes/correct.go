package main

import (
	. "github.com/mmcloughlin/avo/build"
	. "github.com/mmcloughlin/avo/operand"
	. "github.com/mmcloughlin/avo/reg"
)

// Places of what correctWide reads and leaves behind its pointer k, bytes.
const (
	atDT    = 4 * iota
	atW     //
	atHeat  //
	atRise  //
	atRefC  //
	atLast  //
	atWorst //
	atHot   = atWorst + 32
)

// The grid of the table of rates, as the package has it.
const (
	lowCure   = 1.0 / 32
	lowSteps  = 16
	perCure   = 256
	cureSteps = lowSteps + 248
	coldestC  = -30
	perDegree = 2
	rowLength = 721
)

// numbers are constants in memory, eight times each.
type numbers struct{ one, half, lowCure, perLow, lowSteps, perCure, coldest, perDegree, cureTop, row, sizes, below Mem }

func always(name string, v Constant) Mem {
	m := GLOBL(name, RODATA|NOPTR)
	for k := range 8 {
		DATA(4*k, v)
	}
	return m
}

func newNumbers() numbers {
	return numbers{
		one: always("one", F32(1)), half: always("half", F32(0.5)), lowCure: always("lowCure", F32(lowCure)), perLow: always("perLow", F32(1/lowCure)),
		lowSteps: always("lowSteps", F32(lowSteps)), perCure: always("perCure", F32(perCure)), coldest: always("coldest", F32(coldestC)),
		perDegree: always("perDegree", F32(perDegree)), cureTop: always("cureTop", F32(cureSteps-0.001)), row: always("row", U32(rowLength)),
		sizes: always("sizes", U32(0x7fffffff)), below: always("below", U32(0xff800000)),
	}
}

func correct() {
	k := newNumbers()
	text("correctWide", "flow, was, now, cap, capF, mass, cure, cureNext, rate, before, rateNext, table *float32, n int, k *[22]float32")
	flow, was, now, cap, capF, mass := array("flow"), array("was"), array("now"), array("cap"), array("capF"), array("mass")
	cure, cureNext, rate, before, rateNext, table := array("cure"), array("cureNext"), array("rate"), array("before"), array("rateNext"), array("table")
	worst, hot, bad := YMM(), YMM(), YMM()
	VXORPS(worst, worst, worst)
	VXORPS(bad, bad, bad)
	VMOVUPS(k.below, hot)
	cell := GP64()
	XORQ(cell, cell)
	same := func(at int) VecVirtual { // a constant of this call
		p := array("k")
		v := YMM()
		VBROADCASTSS(Mem{Base: p, Disp: at}, v)
		return v
	}
	// guess leaves the rate at the step's beginning in r0 and the one expected over it in d.
	guess := func() (r0, d VecVirtual) {
		r0, d = YMM(), YMM()
		VMOVUPS(f32(rate, cell), r0)
		VMOVAPS(r0, d)
		b := YMM()
		VMOVUPS(f32(before, cell), b)
		expected(d, b, same(atW), zero())
		return r0, d
	}
	// slope returns what the capacity gains with a K.
	slope := func() VecVirtual {
		s := same(atRise)
		VMULPS(f32(mass, cell), s, s)
		return s
	}
	Label("loop")

	// heat into temperature
	s, t, e2, cn, x := slope(), YMM(), YMM(), YMM(), YMM()
	VMOVUPS(f32(was, cell), t)
	VMULPS(t, s, cn)
	VADDPS(f32(cap, cell), cn, cn)
	VMOVUPS(f32(flow, cell), e2)
	VMULPS(f32(capF, cell), e2, e2)
	VADDPS(e2, e2, e2)
	VMULPS(cn, cn, x)
	VMULPS(e2, s, s)
	VADDPS(s, x, x)
	VMAXPS(zero(), x, x)
	VSQRTPS(x, x)
	VADDPS(x, cn, x)
	VDIVPS(x, e2, x)
	VADDPS(x, t, t)

	// cure expected, and the rate there
	r0, d := guess()
	a := YMM()
	VMULPS(same(atDT), d, a)
	VADDPS(f32(cure, cell), a, a)
	r := rateAt(table, a, t, same, k)

	// correction
	more, off := YMM(), YMM()
	r0, d = guess()
	VADDPS(r, r0, more)
	VMULPS(k.half, more, more)
	VSUBPS(d, more, more)
	VMULPS(same(atDT), more, more)
	x = YMM()
	VMOVUPS(k.one, x)
	VSUBPS(a, x, x)
	VMINPS(x, more, more)
	VMOVUPS(f32(mass, cell), off)
	VMULPS(same(atHeat), off, off)
	VMULPS(more, off, off)
	s = slope()
	VMULPS(t, s, s)
	VADDPS(f32(cap, cell), s, s)
	VDIVPS(s, off, off)
	VMULPS(zero(), r, s)
	VADDPS(s, off, off)
	VADDPS(off, t, t)
	VADDPS(more, a, a)

	// cells that do not react stay as they are
	m, mask := YMM(), YMM()
	VMOVUPS(f32(mass, cell), m)
	positive(m, zero(), mask)
	VMOVUPS(f32(now, cell), x)
	VBLENDVPS(mask, t, x, x)
	VMOVUPS(x, f32(now, cell))
	VMOVUPS(f32(cure, cell), x)
	VBLENDVPS(mask, a, x, x)
	VMOVUPS(x, f32(cureNext, cell))
	VANDPS(mask, r, r)
	VMOVUPS(r, f32(rateNext, cell))
	VANDPS(mask, off, off)
	VANDPS(k.sizes, off, off)
	VCMPPS(Imm(3), off, off, x)
	VORPS(x, bad, bad)
	VMAXPS(off, worst, worst)
	VMOVUPS(k.below, x)
	VBLENDVPS(mask, t, x, x)
	VMAXPS(x, hot, hot)

	ADDQ(Imm(8), cell)
	n, err := Param("n").Resolve()
	if err != nil {
		panic(err)
	}
	CMPQ(cell, n.Addr)
	JLT(LabelRef("loop"))

	VORPS(bad, worst, worst)
	out := array("k")
	VMOVUPS(worst, Mem{Base: out, Disp: atWorst})
	VMOVUPS(hot, Mem{Base: out, Disp: atHot})
	VZEROUPPER()
	RET()
}

// rateAt returns the rates at cures a and temperatures t over the reference.
func rateAt(table Register, a, t VecVirtual, same func(int) VecVirtual, k numbers) VecVirtual {
	tempC, x, low, pick, none := YMM(), YMM(), YMM(), YMM(), zero()
	VADDPS(same(atRefC), t, tempC)
	VSUBPS(k.lowCure, a, x)
	VMULPS(k.perCure, x, x)
	VADDPS(k.lowSteps, x, x)
	VMULPS(k.perLow, a, low)
	VMAXPS(none, low, low)
	VSQRTPS(low, low)
	VMULPS(k.lowSteps, low, low)
	VCMPPS(Imm(0x11), k.lowCure, a, pick) // a below it
	VBLENDVPS(pick, low, x, x)
	y := YMM()
	VSUBPS(k.coldest, tempC, y)
	VMULPS(k.perDegree, y, y)
	VMAXPS(none, x, x)
	VMINPS(k.cureTop, x, x)
	VMAXPS(none, y, y)
	VMINPS(same(atLast), y, y)
	place, j := YMM(), YMM()
	whole := YMM()
	VCVTTPS2DQ(x, place)
	VCVTDQ2PS(place, whole)
	VSUBPS(whole, x, x)
	VCVTTPS2DQ(y, j)
	VCVTDQ2PS(j, whole)
	VSUBPS(whole, y, y)
	VPMULLD(k.row, place, place)
	VPADDD(j, place, place)
	entry := func(further int) VecVirtual {
		all, v := YMM(), YMM()
		VPCMPEQD(all, all, all)
		VGATHERDPS(all, Mem{Base: table, Index: place, Scale: 4, Disp: 4 * further}, v)
		return v
	}
	between := func(further int) VecVirtual {
		v, w := entry(further), entry(further+1)
		VSUBPS(v, w, w)
		VMULPS(w, y, w)
		VADDPS(w, v, v)
		return v
	}
	r, high := between(0), between(rowLength)
	VSUBPS(r, high, high)
	VMULPS(high, x, high)
	VADDPS(high, r, r)
	VADDPS(tempC, a, x)
	VMULPS(zero(), x, x)
	VADDPS(x, r, r)
	return r
}
