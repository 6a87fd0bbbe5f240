package svg

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
)

// readOne reads a drawing of one outline.
func readOne(t *testing.T, drawing string, opt Options) (*Drawing, Outline) {
	t.Helper()
	d, found, err := Read("one.svg", []byte(drawing), opt)
	if err != nil || len(d.Outlines) != 1 {
		t.Fatalf("outlines %+v, findings %v, error %v", d, found, err)
	}
	return d, d.Outlines[0]
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f, tolerance %g", what, got, want, tol)
	}
}

func nearBox(t *testing.T, o Outline, x0, y0, x1, y1 float64) {
	t.Helper()
	near(t, o.ID+" x0", o.Box.Min.X, x0, 1e-6)
	near(t, o.ID+" y0", o.Box.Min.Y, y0, 1e-6)
	near(t, o.ID+" x1", o.Box.Max.X, x1, 1e-6)
	near(t, o.ID+" y1", o.Box.Max.Y, y1, 1e-6)
}

// TestPageInEveryUnit draws the same rectangle, from a tenth to half of the page, on
// pages of every unit.
func TestPageInEveryUnit(t *testing.T) {
	const px = 25.4 / 96
	for _, tt := range []struct {
		attrs      string
		resolution float64
		w, h       float64 // page, mm
		physical   bool
	}{
		{`width="1220mm" height="410mm" viewBox="0 0 1220 410"`, 0, 1220, 410, true},
		{`width="122cm" height="41cm" viewBox="0 0 1220 410"`, 0, 1220, 410, true},
		{`width="48in" height="16in" viewBox="0 0 480 160"`, 0, 1219.2, 406.4, true},
		{`width="72pt" height="36pt" viewBox="0 0 10 5"`, 0, 25.4, 12.7, true},
		{`width="6pc" height="3pc" viewBox="0 0 10 5"`, 0, 25.4, 12.7, true},
		{`width="400Q" height="200Q" viewBox="0 0 10 5"`, 0, 100, 50, true},
		{`width="960" height="480" viewBox="0 0 10 5"`, 0, 254, 127, false},
		{`width="960px" height="480px" viewBox="0 0 10 5"`, 0, 254, 127, false},
		{`width="720" height="360" viewBox="0 0 10 5"`, 72, 254, 127, false},
		{`width="900" height="450" viewBox="0 0 10 5"`, 90, 254, 127, false},
		{`viewBox="0 0 960 480"`, 0, 254, 127, false},
		{`width="100%" height="100%" viewBox="0 0 960 480"`, 0, 254, 127, false},
		{`width="200mm" viewBox="0 0 10 5"`, 0, 200, 100, true},
		{`height="100mm" viewBox="0 0 10 5"`, 0, 200, 100, true},
		{`width=" 1.22e3mm " height="410MM" viewBox="0,0,1220,410"`, 0, 1220, 410, true},
		{`width="200" height="100"`, 0, 200 * px, 100 * px, false},
	} {
		t.Run(tt.attrs, func(t *testing.T) {
			d, o := readOne(t, `<svg xmlns="http://www.w3.org/2000/svg" `+tt.attrs+`><rect x="10%" y="10%" width="40%" height="40%"/></svg>`, Options{Resolution: tt.resolution})
			near(t, "page width", d.PageWidthMM, tt.w, 1e-9)
			near(t, "page height", d.PageHeightMM, tt.h, 1e-9)
			nearBox(t, o, tt.w/10, tt.h/10, tt.w/2, tt.h/2)
			if d.Physical != tt.physical || d.UnitNote == "" {
				t.Errorf("physical %v, note %q", d.Physical, d.UnitNote)
			}
		})
	}
}

// TestLengthsInsideThePage checks that a real unit inside keeps the CSS proportion of
// 96 px an inch to the user unit, whatever the viewBox makes of a user unit.
func TestLengthsInsideThePage(t *testing.T) {
	_, o := readOne(t, `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200"><rect x="5mm" y="1cm" width="1in" height="36pt"/></svg>`, Options{})
	nearBox(t, o, 5, 10, 30.4, 22.7)
}

func TestAspectRatio(t *testing.T) {
	for _, tt := range []struct {
		aspect         string
		x0, y0, x1, y1 float64 // of the viewBox's own edge, on a page of 200 by 100
	}{
		{"", 50, 0, 150, 100},
		{"xMidYMid meet", 50, 0, 150, 100},
		{"xMinYMid", 0, 0, 100, 100},
		{"xMaxYMin meet", 100, 0, 200, 100},
		{"none", 0, 0, 200, 100},
		{"xMidYMid slice", 0, -50, 200, 150},
		{"xMidYMin slice", 0, 0, 200, 200},
		{"xMidYMax slice", 0, -100, 200, 100},
		{"nonsense", 50, 0, 150, 100},
	} {
		t.Run(tt.aspect, func(t *testing.T) {
			_, o := readOne(t, `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="-5 -5 10 10" preserveAspectRatio="`+
				tt.aspect+`"><rect x="-5" y="-5" width="10" height="10"/></svg>`, Options{})
			nearBox(t, o, tt.x0, tt.y0, tt.x1, tt.y1)
		})
	}
}

func TestTransforms(t *testing.T) {
	for _, tt := range []struct {
		transform      string
		x0, y0, x1, y1 float64 // of the square from 10,10 to 20,20
	}{
		{"translate(5)", 15, 10, 25, 20},
		{"translate(5 -3)", 15, 7, 25, 17},
		{"translate(5-3)", 15, 7, 25, 17},
		{"scale(2)", 20, 20, 40, 40},
		{"scale(2,.5)", 20, 5, 40, 10},
		{"rotate(90)", -20, 10, -10, 20},
		{"rotate(180, 15, 15)", 10, 10, 20, 20},
		{"rotate(90 10 10)", 0, 10, 10, 20},
		{"skewX(45)", 20, 10, 40, 20},
		{"skewY(45)", 10, 20, 20, 40},
		{"matrix(0 1 1 0 3 4)", 13, 14, 23, 24},
		{"translate(1 1) , scale(2)", 21, 21, 41, 41},
		{"translate(1 1)scale(2)\n\ttranslate(1 1)", 23, 23, 43, 43},
		{"none", 10, 10, 20, 20},
		{"", 10, 10, 20, 20},
	} {
		t.Run(tt.transform, func(t *testing.T) {
			_, o := readOne(t, page100(`<rect x="10" y="10" width="10" height="10" transform="`+tt.transform+`"/>`), Options{})
			nearBox(t, o, tt.x0, tt.y0, tt.x1, tt.y1)
		})
	}
}

func TestNestedViewportsAndSymbols(t *testing.T) {
	for _, tt := range []struct {
		name, body     string
		x0, y0, x1, y1 float64
	}{
		{"svg in svg", `<svg x="10" y="20" width="50" height="50" viewBox="0 0 10 10"><rect width="50%" height="10"/></svg>`, 10, 20, 35, 70},
		{"svg without viewBox", `<svg x="10" y="20"><rect width="50%" height="10"/></svg>`, 10, 20, 60, 30},
		{"symbol by its use", `<symbol id="s" viewBox="0 0 10 10"><rect width="10" height="5"/></symbol><use href="#s" x="10" y="20" width="40" height="40"/>`, 10, 20, 50, 40},
		{"symbol is not drawn itself", `<symbol id="t"><rect width="9" height="9"/></symbol><rect width="2" height="3"/>`, 0, 0, 2, 3},
		{"use of an svg", `<defs><svg id="s" width="5" height="5" viewBox="0 0 10 10"><rect width="10" height="10"/></svg></defs><use href="#s" x="1" width="20" height="20"/>`, 1, 0, 21, 20},
		{"use moved and turned", `<defs><rect id="r" width="10" height="5"/></defs><use href="#r" x="10" transform="rotate(90)"/>`, -5, 10, 0, 20},
		{"use of a use", `<defs><rect id="r" width="10" height="5"/><use id="u" href="#r" x="1"/></defs><use href="#u" y="2"/>`, 1, 2, 11, 7},
		{"switch", `<switch><foreignObject/><rect width="7" height="5"/><rect width="50" height="50"/></switch>`, 0, 0, 7, 5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, o := readOne(t, page100(tt.body), Options{})
			nearBox(t, o, tt.x0, tt.y0, tt.x1, tt.y1)
		})
	}
}

func TestCheckScaleNamesTheLikelySlip(t *testing.T) {
	for _, tt := range []struct {
		pageW, pageH float64
		want         string
		severity     finding.Severity
	}{
		{1220, 410, "", 0},
		{1222, 411, "", 0},
		{1220 * 25.4 / 96, 410 * 25.4 / 96, "millimetres but were read as px", finding.Stop},
		{1220 * 72.0 / 96, 410 * 72.0 / 96, "72 px per inch", finding.Stop},
		{1220 * 90.0 / 96, 410 * 90.0 / 96, "90 px per inch", finding.Stop},
		{122, 41, "centimetres", finding.Stop},
		{700, 700 * 410.0 / 1220, "times as large", finding.Caution},
		{500, 500, "", 0},
		{math.NaN(), 5, "", 0},
	} {
		d := &Drawing{PageWidthMM: tt.pageW, PageHeightMM: tt.pageH}
		found := d.CheckScale(1220, 410)
		if tt.want == "" {
			if len(found) != 0 {
				t.Errorf("%v: %v", tt, found)
			}
			continue
		}
		if len(found) != 1 || found[0].Severity != tt.severity || !strings.Contains(found[0].Text, tt.want) {
			t.Errorf("%v: %v", tt, found)
		}
	}
}
