package toolpath

import (
	"math"

	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// deepMM is the depth from which a place belongs to the basin. Chosen.
const deepMM = 0.01

// Block turns the depths of a basin, in finished view over the outer box, into the
// block of foam that leaves them: in form view, from the block's lower left corner, z
// counted from the top of a block of the stock's thickness.
//
//	x_form = length - x,   z = depth - stock
//
// The deepest floor is the block's top and the show face its base; where the stock is
// thicker than the basin is deep, the excess is carved off the top. The block ends
// with the basin and with the box. It is empty where there is no basin.
func Block(depth Heights, length, width, stock units.Length) Heights {
	c0, c1, r0, r1 := depth.Cols, -1, depth.Rows, -1
	for r := range depth.Rows {
		for c := range depth.Cols {
			p := depth.Node(c, r)
			if !(depth.At(c, r) > deepMM) || p.X < -slackMM || p.Y < -slackMM || p.X > length.MM()+slackMM || p.Y > width.MM()+slackMM {
				continue
			}
			c0, c1, r0, r1 = min(c0, c), max(c1, c), min(r0, r), max(r1, r)
		}
	}
	if c1 <= c0 || r1 <= r0 {
		return Heights{}
	}
	out, err := grid.New(c1-c0+1, r1-r0+1, depth.DX, depth.DY)
	if err != nil {
		return Heights{}
	}
	for r := range out.Rows {
		for c := range out.Cols {
			d := depth.At(c1-c, r0+r)
			if !(d > 0) {
				d = 0
			}
			out.Set(c, r, math.Min(0, d-stock.MM()))
		}
	}
	return out
}

// Stock returns the thickness of the sheets that glued on each other make a block for
// the depths, and how many they are.
func Stock(depth Heights, sheet units.Length) (units.Length, int) {
	_, deep := depth.Range()
	if !positive(sheet.MM()) || !positive(deep) {
		return units.Length(math.Max(0, deep)), 0
	}
	n := math.Max(1, math.Ceil(deep/sheet.MM()-1e-6))
	return units.Length(n) * sheet, int(n)
}
