package main

import (
	. "github.com/mmcloughlin/avo/build"
	. "github.com/mmcloughlin/avo/operand"
	. "github.com/mmcloughlin/avo/reg"
)

// rows are eight lines of a block, far apart in memory.
type rows struct{ first, fifth, stride, three Register }

// rowsAt returns the rows from an array's cell on.
func rowsAt(array, stride, three Register) rows {
	fifth := GP64()
	LEAQ(Mem{Base: array, Index: stride, Scale: 4}, fifth)
	return rows{array, fifth, stride, three}
}

func (r rows) at(k int) Mem {
	base := r.first
	if k >= 4 {
		base = r.fifth
	}
	switch k % 4 {
	case 1:
		return Mem{Base: base, Index: r.stride, Scale: 1}
	case 2:
		return Mem{Base: base, Index: r.stride, Scale: 2}
	case 3:
		return Mem{Base: base, Index: r.three, Scale: 1}
	}
	return Mem{Base: base}
}

func (r rows) move(cells int32) {
	if cells > 0 {
		ADDQ(Imm(uint64(4*cells)), r.first)
		ADDQ(Imm(uint64(4*cells)), r.fifth)
		return
	}
	SUBQ(Imm(uint64(-4*cells)), r.first)
	SUBQ(Imm(uint64(-4*cells)), r.fifth)
}

// turn turns eight rows of eight numbers into columns.
func turn(v [8]VecVirtual) [8]VecVirtual {
	var a, b, c [8]VecVirtual
	for k := 0; k < 8; k += 2 {
		a[k], a[k+1] = YMM(), YMM()
		VUNPCKLPS(v[k+1], v[k], a[k])
		VUNPCKHPS(v[k+1], v[k], a[k+1])
	}
	for k := 0; k < 8; k += 4 {
		for h := range 2 {
			b[k+2*h], b[k+2*h+1] = YMM(), YMM()
			VSHUFPS(Imm(0x44), a[k+2+h], a[k+h], b[k+2*h])
			VSHUFPS(Imm(0xee), a[k+2+h], a[k+h], b[k+2*h+1])
		}
	}
	for k := range 4 {
		c[k], c[k+4] = YMM(), YMM()
		VPERM2F128(Imm(0x20), b[k+4], b[k], c[k])
		VPERM2F128(Imm(0x31), b[k+4], b[k], c[k+4])
	}
	return c
}

func along() {
	text("alongWide", "dst, src, pe, f, work *float32, nx, n int")
	pe, f, work, stride, n := array("pe"), array("f"), array("work"), array("nx"), array("n")
	SHLQ(Imm(2), stride)
	three := GP64()
	LEAQ(Mem{Base: stride, Index: stride, Scale: 2}, three)
	last := zero()
	left := GP64()

	src := rowsAt(array("src"), stride, three)
	MOVQ(n, left)
	Label("there")
	var v [8]VecVirtual
	for k := range v {
		v[k] = YMM()
		VMOVUPS(src.at(k), v[k])
	}
	v = turn(v)
	for k := range v {
		VMULPS(Mem{Base: pe, Disp: 64 * k}, v[k], v[k])
		VMULPS(Mem{Base: pe, Disp: 64*k + 32}, last, last)
		VADDPS(v[k], last, last)
		VMOVUPS(last, Mem{Base: work, Disp: 32 * k})
	}
	src.move(8)
	ADDQ(U32(512), pe)
	ADDQ(U32(256), work)
	SUBQ(Imm(8), left)
	JNE(LabelRef("there"))

	end := GP64() // of the lines, bytes
	MOVQ(n, end)
	SHLQ(Imm(5), end)
	ADDQ(end, f)
	SHRQ(Imm(3), end)
	to := array("dst")
	ADDQ(end, to)
	dst := rowsAt(to, stride, three)
	VXORPS(last, last, last)
	MOVQ(n, left)
	Label("again")
	dst.move(-8)
	SUBQ(U32(256), f)
	SUBQ(U32(256), work)
	for k := 7; k >= 0; k-- {
		v[k] = YMM()
		VMULPS(Mem{Base: f, Disp: 32 * k}, last, last)
		VADDPS(Mem{Base: work, Disp: 32 * k}, last, last)
		VMOVAPS(last, v[k])
	}
	v = turn(v)
	for k := range v {
		VMOVUPS(v[k], dst.at(k))
	}
	SUBQ(Imm(8), left)
	JNE(LabelRef("again"))
	VZEROUPPER()
	RET()
}
