package grid

import "math"

// Above returns the area where f is at or above level, mm2, and the volume between
// there and the level, mm3, both exact for the four triangles of every cell:
//
//	one corner up, c >= 0 > b, a:  area A c2/((c-a)(c-b)),  volume area c/3
//	two up:                        what the lowest corner takes, subtracted
//
// with a <= b <= c the corners' heights over the level and A the triangle's area. A
// cell with a missing node counts as below.
func (f Field) Above(level float64) (area, volume float64) {
	whole := 0 // cells all above
	var wholeSum, partArea, partVolume float64
	for r := range f.Rows - 1 {
		low, high := f.Z[r*f.Cols:][:f.Cols], f.Z[(r+1)*f.Cols:][:f.Cols]
		var rowSum float64
		for c := range f.Cols - 1 {
			z := [4]float64{low[c] - level, low[c+1] - level, high[c+1] - level, high[c] - level}
			switch {
			case z[0] >= 0 && z[1] >= 0 && z[2] >= 0 && z[3] >= 0:
				whole++
				rowSum += z[0] + z[1] + z[2] + z[3]
			case z[0] >= 0 || z[1] >= 0 || z[2] >= 0 || z[3] >= 0:
				a, v := cellAbove(z)
				partArea += a
				partVolume += v
			}
		}
		wholeSum += rowSum
	}
	cell := f.DX * f.DY
	return (float64(whole) + partArea) * cell, (wholeSum/4 + partVolume) * cell
}

// cellAbove returns area and volume above zero of a unit cell with corners z.
func cellAbove(z [4]float64) (area, volume float64) {
	mean := (z[0] + z[1] + z[2] + z[3]) / 4
	if math.IsNaN(mean) || math.IsInf(mean, 0) {
		return 0, 0
	}
	for i, a := range z {
		da, dv := triangleAbove(a, z[(i+1)%4], mean)
		area += da / 4
		volume += dv / 4
	}
	return area, volume
}

// triangleAbove returns area and volume above zero of a triangle of area 1.
func triangleAbove(a, b, c float64) (area, volume float64) {
	if a > b {
		a, b = b, a
	}
	if b > c {
		b, c = c, b
	}
	if a > b {
		a, b = b, a
	}
	switch {
	case a >= 0:
		return 1, (a + b + c) / 3
	case c < 0:
		return 0, 0
	case b < 0:
		area = c / (c - a) * (c / (c - b))
		return area, area * c / 3
	}
	below := a / (b - a) * (a / (c - a))
	return 1 - below, (a+b+c)/3 - below*a/3
}

// Volume returns the volume under the bilinear surface down to height zero, mm3,
// heights below zero counted as less. Cells with a missing node do not count.
func (f Field) Volume() float64 {
	var sum float64
	for r := range f.Rows - 1 {
		low, high := f.Z[r*f.Cols:][:f.Cols], f.Z[(r+1)*f.Cols:][:f.Cols]
		var row float64
		for c := range f.Cols - 1 {
			if z := low[c] + low[c+1] + high[c] + high[c+1]; z == z {
				row += z
			}
		}
		sum += row
	}
	return sum / 4 * f.DX * f.DY
}
