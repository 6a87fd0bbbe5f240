package svg

import (
	"fmt"
	"strings"
)

// A viewBox is the part of the user plane that fills a viewport.
type viewBox struct{ x, y, w, h float64 }

func parseViewBox(text string) (viewBox, error) {
	v, err := numbers(text, 4)
	switch {
	case err != nil:
		return viewBox{}, err
	case len(v) != 4:
		return viewBox{}, fmt.Errorf("it has %d numbers, not 4", len(v))
	case v[2] < 0 || v[3] < 0:
		return viewBox{}, fmt.Errorf("its width %g or height %g is negative", v[2], v[3])
	case v[2] == 0 || v[3] == 0:
		return viewBox{}, fmt.Errorf("its width %g or height %g is zero, so that nothing is drawn", v[2], v[3])
	}
	return viewBox{v[0], v[1], v[2], v[3]}, nil
}

// into returns the matrix that fits b into a viewport of w by h at the origin, as
// preserveAspectRatio says. Source: [w3c-svg2] section 8.2, 8.7.
func (b viewBox) into(w, h float64, aspect string) matrix {
	sx, sy := w/b.w, h/b.h
	align, slice := parseAspect(aspect)
	if align != "none" {
		s := min(sx, sy)
		if slice {
			s = max(sx, sy)
		}
		sx, sy = s, s
	}
	dx := shift(align, "xMin", "xMax") * (w - b.w*sx)
	dy := shift(align, "YMin", "YMax") * (h - b.h*sy)
	if align == "none" {
		dx, dy = 0, 0
	}
	return translate(dx, dy).then(scale(sx, sy)).then(translate(-b.x, -b.y))
}

func shift(align, low, high string) float64 {
	switch {
	case strings.Contains(align, low):
		return 0
	case strings.Contains(align, high):
		return 1
	}
	return 0.5
}

// parseAspect reads preserveAspectRatio; what it cannot read is the default,
// "xMidYMid meet".
func parseAspect(text string) (align string, slice bool) {
	words := strings.Fields(text)
	if len(words) > 0 && words[0] == "defer" {
		words = words[1:]
	}
	align = "xMidYMid"
	if len(words) == 0 {
		return align, false
	}
	if words[0] == "none" || len(words[0]) == 8 && words[0][0] == 'x' && words[0][4] == 'Y' {
		align = words[0]
	}
	return align, len(words) > 1 && words[1] == "slice"
}
