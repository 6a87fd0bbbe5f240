package heightmap

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/grid"
)

func readPNG(where finding.Where, data []byte, opt Options) (Map, []finding.Finding, error) {
	const again = "Save the picture again as a grey PNG of 8 or 16 bit."
	head, err := png.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Map{}, nil, fail(where, again, "read picture: %v", err)
	}
	if err := checkSize(where, head.Width, head.Height); err != nil {
		return Map{}, nil, err
	}
	if opt.Depth <= 0 {
		return Map{}, nil, fail(where, "State how deep black is below the show face.", "a picture has no depth of its own")
	}
	dx, dy, ok := spacing(head.Width, head.Height, 0, opt)
	if !ok {
		return Map{}, nil, fail(where, "State the length of the map on the piece.", "a picture has no size of its own")
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return Map{}, nil, fail(where, again, "read picture: %v", err)
	}
	f, err := grid.New(head.Width, head.Height, dx, dy)
	if err != nil {
		return Map{}, nil, fail(where, again, "%v", err)
	}
	found := checkStretch(where, dx, dy)
	found = append(found, greys(where, img, f)...)
	found = append(found, checkRange(where, f)...)
	deepen(f, float64(opt.Depth), opt.Invert)
	return Map{Name: where.File, Depth: f}, found, nil
}

// deepen turns grey from 0, black, to 1, white, into depth.
func deepen(f grid.Field, depth float64, invert bool) {
	for i, g := range f.Z {
		if !invert {
			g = 1 - g
		}
		f.Z[i] = g * depth
	}
}

// greys fills f with the grey of img, 0 to 1, its top row last.
func greys(where finding.Where, img image.Image, f grid.Field) []finding.Finding {
	at := img.Bounds().Min
	switch p := img.(type) {
	case *image.Gray:
		for r := range f.Rows {
			from := p.Pix[(f.Rows-1-r)*p.Stride:]
			for c := range f.Cols {
				f.Set(c, r, float64(from[c])/math.MaxUint8)
			}
		}
		return nil
	case *image.Gray16:
		for r := range f.Rows {
			from := p.Pix[(f.Rows-1-r)*p.Stride:]
			for c := range f.Cols {
				f.Set(c, r, float64(uint16(from[2*c])<<8|uint16(from[2*c+1]))/math.MaxUint16)
			}
		}
		return nil
	}
	coloured, clear := 0, 0
	for r := range f.Rows {
		for c := range f.Cols {
			v, isColour, isClear := grey(img.At(at.X+c, at.Y+f.Rows-1-r))
			f.Set(c, r, v)
			coloured += isColour
			clear += isClear
		}
	}
	return colourFindings(where, coloured, clear, f.Cols*f.Rows)
}

// grey returns the grey of a colour, 0 to 1, laid on white where it is clear:
//
//	Y = 0.299 R + 0.587 G + 0.114 B
//
// and whether it is a colour and whether it is clear, as counts.
// Source: [itu-bt601] section 2.5.1.
func grey(c color.Color) (v float64, coloured, clear int) {
	n := color.NRGBA64Model.Convert(c).(color.NRGBA64)
	if n.R != n.G || n.G != n.B {
		coloured = 1
	}
	if n.A < math.MaxUint16 {
		clear = 1
	}
	y := (0.299*float64(n.R) + 0.587*float64(n.G) + 0.114*float64(n.B)) / math.MaxUint16
	if coloured == 0 {
		y = float64(n.R) / math.MaxUint16
	}
	a := float64(n.A) / math.MaxUint16
	return y*a + 1 - a, coloured, clear
}

func colourFindings(where finding.Where, coloured, clear, all int) []finding.Finding {
	found := []finding.Finding{notGrey.At(where, "The picture is not stored as grey; its colours are read as %s.", readAs(coloured))}
	if coloured > 0 {
		found[0] = found[0].As(finding.Caution).Measured(float64(coloured), 0, "pixels")
	}
	if clear > 0 {
		found = append(found, seeThrough.At(where, "%d of %d pixels are clear or half clear and are laid on white.", clear, all))
	}
	return found
}

func readAs(coloured int) string {
	if coloured == 0 {
		return "the grey they are"
	}
	return "their brightness, which is no depth that anybody set"
}

// checkRange says when a picture holds nothing.
func checkRange(where finding.Where, f grid.Field) []finding.Finding {
	low, high := f.Range()
	if low == high {
		return []finding.Finding{flat.At(where, "The whole map has one height, so it holds no basin.")}
	}
	return nil
}
