package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// figure has one item of every kind, and texts that XML must not take for markup.
func figure() drawing.Drawing {
	square := geom.Rect(0, 0, 200, 100).Ring()
	return drawing.Drawing{
		Name: "Odd name/1", Title: `<&"'> title`, View: "form", Box: geom.Rect(-20, -10, 230, 140), Scale: 2,
		Items: []drawing.Item{
			{Style: drawing.Concrete, Path: &drawing.Path{Rings: []geom.Ring{square}, Closed: true, Fill: true, Hatch: true}},
			{Style: drawing.Resin, Path: &drawing.Path{Rings: []geom.Ring{square}, Closed: true, Fill: true, Shade: 1}},
			{Style: drawing.Hidden, Path: &drawing.Path{Rings: []geom.Ring{square[:2]}}},
			{Style: drawing.Outline, Text: &drawing.Text{At: geom.Point{X: 10, Y: 20}, Text: "a < b & c\x01", Size: 5, Anchor: "middle", Turn: 90}},
			{Style: drawing.Thin, Dim: &drawing.Dimension{A: geom.Point{Y: 100}, B: geom.Point{X: 200, Y: 100}, Offset: 12, Text: "200"}},
			{Style: drawing.Caution, Spot: &drawing.Spot{At: geom.Point{X: 50, Y: 50}, Radius: 8, Label: "<a>"}},
		},
	}
}

func render(t *testing.T, d drawing.Drawing) string {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// elements reads text as XML and returns its elements and its character data.
func elements(t *testing.T, text string) (out []xml.StartElement, letters string) {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return out, letters
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			out = append(out, x.Copy())
		case xml.CharData:
			letters += string(x)
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestXMLKeepsTexts(t *testing.T) {
	_, letters := elements(t, render(t, figure()))
	for _, want := range []string{`<&"'> title`, "a < b & c\uFFFD", "<a>", "FORM VIEW", "200"} {
		if !strings.Contains(letters, want) {
			t.Errorf("the text %q is lost", want)
		}
	}
}

// TestTrueSize: a mm of the drawing is a mm of the page, and one unit of the view box.
func TestTrueSize(t *testing.T) {
	root := elementsOf(t, figure())[0]
	w, h := attribute(root, "width"), attribute(root, "height")
	if want := fmt.Sprintf("0 0 %s %s", strings.TrimSuffix(w, "mm"), strings.TrimSuffix(h, "mm")); attribute(root, "viewBox") != want || !strings.HasSuffix(w, "mm") {
		t.Errorf("%s by %s with the view box %q", w, h, attribute(root, "viewBox"))
	}
	if h != "168mm" { // the box's 150 and a head of 9 mm on paper at 1:2
		t.Errorf("height %s, want 168mm", h)
	}
	for _, e := range elementsOf(t, figure()) {
		if attribute(e, "class") == "concrete" && attribute(e, "d") != "M20 140L220 140L220 40L20 40Z" {
			t.Errorf("a rectangle of 200 x 100 mm became %s", attribute(e, "d"))
		}
	}
}

func elementsOf(t *testing.T, d drawing.Drawing) []xml.StartElement {
	t.Helper()
	out, _ := elements(t, render(t, d))
	return out
}

func TestEveryStyleIsInkedAndNamed(t *testing.T) {
	for _, s := range []drawing.Style{drawing.Outline, drawing.Thin, drawing.Hidden, drawing.Centre, drawing.Frame, drawing.Concrete,
		drawing.Resin, drawing.ResinDeep, drawing.Foam, drawing.Board, drawing.Caution, drawing.StopMark} {
		d := figure()
		d.Items = []drawing.Item{{Style: s, Path: &drawing.Path{Rings: []geom.Ring{geom.Rect(0, 0, 9, 9).Ring()}, Closed: true, Fill: true}}}
		found := false
		for _, e := range elementsOf(t, d) {
			if attribute(e, "class") == string(s) {
				found = attribute(e, "stroke") != "" && attribute(e, "stroke-width") != "0"
			}
		}
		if !found {
			t.Errorf("%s is not inked", s)
		}
	}
}

func TestTheSameBytes(t *testing.T) {
	if a, b := render(t, figure()), render(t, figure()); a != b {
		t.Error("two renders of one drawing differ")
	}
}

func TestBadNumbersStayXML(t *testing.T) {
	nan := math.NaN()
	for name, d := range map[string]drawing.Drawing{
		"nothing":   {},
		"empty box": {Box: geom.EmptyBox(), Scale: 1},
		"nan": {Box: geom.Rect(0, 0, nan, 1), Scale: nan, Items: []drawing.Item{
			{Style: "unknown", Path: &drawing.Path{Rings: []geom.Ring{{{X: nan}, {Y: math.Inf(1)}}, nil}, Fill: true, Shade: nan}},
			{Dim: &drawing.Dimension{}}}},
	} {
		text := render(t, d)
		elements(t, text)
		if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("%s: a number that is none reached the page", name)
		}
	}
}
