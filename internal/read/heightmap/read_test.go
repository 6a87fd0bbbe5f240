package heightmap

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"strings"
	"testing"

	"pourwright/internal/finding"
)

func encode(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// painted is an image whose pixel at x, y is paint(x, y).
func painted(img interface {
	image.Image
	Set(x, y int, c color.Color)
}, paint func(x, y int) color.Color) image.Image {
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			img.Set(x, y, paint(x, y))
		}
	}
	return img
}

func codes(fs []finding.Finding) string {
	var out []string
	for _, f := range fs {
		out = append(out, strings.TrimPrefix(f.Code, "heightmap/"))
	}
	return strings.Join(out, " ")
}

// near reports whether the depths of m, far row first, are want.
func near(m Map, want ...float64) bool {
	f := m.Depth
	if len(want) != f.Cols*f.Rows {
		return false
	}
	for i, w := range want {
		if math.Abs(f.At(i%f.Cols, f.Rows-1-i/f.Cols)-w) > 1e-9 {
			return false
		}
	}
	return true
}

func ExampleRead() {
	m, _, err := Read("dish.txt", []byte("cell: 10 mm\n0 0 0\n0 8 0 # the middle\n0 0 0\n"), Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d x %d nodes over %.0f x %.0f mm, %.1f ml\n", m.Depth.Cols, m.Depth.Rows, m.Depth.Box().Width(), m.Depth.Box().Height(), m.Depth.Volume()/1000)
	_, _, err = Read("dish.txt", []byte("cell: 10 mm\n0 0 0\n0 8\n"), Options{})
	fmt.Println(err)
	// Output:
	// 3 x 3 nodes over 20 x 20 mm, 0.8 ml
	// dish.txt:3:4: row has 2 values, the first row has 3
}

func TestText(t *testing.T) {
	for _, c := range []struct {
		name  string
		text  string
		opt   Options
		want  []float64
		codes string
	}{
		{"spaces", "cell: 1\n0 1\n2 3\n", Options{}, []float64{0, 1, 2, 3}, ""},
		{"commas, semicolons, tabs", "cell: 1\n0, 1\n2;\t3\n", Options{}, []float64{0, 1, 2, 3}, ""},
		{"carriage returns, blanks, no last end", "\n# dish\r\ncell: 1\r\n0 1\r\n\r\n2 3", Options{}, []float64{0, 1, 2, 3}, ""},
		{"byte order mark", "\xef\xbb\xbfcell: 1\n0 1\n2 3\n", Options{}, []float64{0, 1, 2, 3}, ""},
		{"a length instead of a cell", "0 1\n2 3\n", Options{Length: 10}, []float64{0, 1, 2, 3}, ""},
		{"inches", "cell: 0.5 in\nunit: in\n0 1\n2 3\n", Options{}, []float64{0, 25.4, 50.8, 76.2}, ""},
		{"heights", "cell: 1\nvalues: height\n5 4\n3 2\n", Options{}, []float64{0, 1, 2, 3}, ""},
		{"heights below the face", "cell: 1\n0 -1\n-2 -3\n", Options{}, []float64{0, 1, 2, 3}, "signs"},
		{"above the face", "cell: 1\n-1 1\n2 3\n", Options{}, []float64{0, 1, 2, 3}, "above-face"},
		{"scaled to a depth", "cell: 1\n0 1\n2 4\n", Options{Depth: 8}, []float64{0, 2, 4, 8}, "rescaled"},
		{"the depth it has", "cell: 1\n0 1\n2 4\n", Options{Depth: 4}, []float64{0, 1, 2, 4}, ""},
		{"a cell that is not the stated one", "cell: 1\n0 1\n2 4\n", Options{Length: 7}, []float64{0, 1, 2, 4}, "resized"},
		{"stretched", "0 1\n2 4\n", Options{Length: 7, Width: 8}, []float64{0, 1, 2, 4}, "stretched"},
		{"missing values", "cell: 1\nnodata: -9999\n0 -9999\n2 4\n", Options{}, []float64{0, 0, 2, 4}, "missing"},
		{"open ASCII grid", "ncols 2\nnrows 2\nxllcorner 0.0\nyllcorner 0.0\ncellsize 2\nNODATA_value -1\n0 1\n-1 3\n", Options{}, []float64{0, 1, 0, 3}, "missing"},
		{"flat", "cell: 1\n2 2\n2 2\n", Options{}, []float64{2, 2, 2, 2}, "flat"},
		{"exponents and signs", "cell: 1\n+0 1e0\n.2e1 3.\n", Options{}, []float64{0, 1, 2, 3}, ""},
	} {
		m, fs, err := Read("m.txt", []byte(c.text), c.opt)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !near(m, c.want...) || codes(fs) != c.codes {
			t.Errorf("%s: %v, findings %q; want %v, %q", c.name, m.Depth.Z, codes(fs), c.want, c.codes)
		}
	}
}

func TestPictures(t *testing.T) {
	box := image.Rect(0, 0, 2, 2)
	tone := func(x, y int) uint8 { return uint8(255 - 85*(x+2*y)) } // white, then darker
	grey := func(x, y int) color.Color { return color.Gray{Y: tone(x, y)} }
	want := []float64{0, 10, 20, 30}
	palette := color.Palette{color.Gray{Y: 255}, color.Gray{Y: 170}, color.Gray{Y: 85}, color.Gray{Y: 0}}
	for _, c := range []struct {
		name  string
		img   image.Image
		opt   Options
		want  []float64
		codes string
	}{
		{"8 bit grey", painted(image.NewGray(box), grey), Options{Length: 5, Depth: 30}, want, ""},
		{"16 bit grey", painted(image.NewGray16(box), grey), Options{Length: 5, Depth: 30}, want, ""},
		{"colour that is grey", painted(image.NewRGBA(box), grey), Options{Length: 5, Depth: 30}, want, "not-grey"},
		{"palette", painted(image.NewPaletted(box, palette), grey), Options{Length: 5, Depth: 30}, want, "not-grey"},
		{"inverted", painted(image.NewGray(box), grey), Options{Length: 5, Depth: 30, Invert: true}, []float64{30, 20, 10, 0}, ""},
		{"clear pixels are white", painted(image.NewNRGBA(box), func(x, y int) color.Color {
			return color.NRGBA{tone(x, y), tone(x, y), tone(x, y), uint8(255 * x)}
		}), Options{Length: 5, Depth: 30}, []float64{0, 10, 0, 30}, "not-grey see-through"},
		{"colour", painted(image.NewRGBA(box), func(x, y int) color.Color {
			return color.RGBA{uint8(255 * x), uint8(255 * y), 0, 255}
		}), Options{Length: 5, Depth: 30}, []float64{30, 30 * (1 - 0.299), 30 * (1 - 0.587), 30 * 0.114}, "not-grey"},
		{"flat", painted(image.NewGray(box), func(x, y int) color.Color { return color.Gray{Y: 9} }), Options{Length: 5, Depth: 255}, []float64{246, 246, 246, 246}, "flat"},
	} {
		m, fs, err := Read("m.png", encode(t, c.img), c.opt)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !near(m, c.want...) || codes(fs) != c.codes {
			t.Errorf("%s: %v, findings %q; want %v, %q", c.name, m.Depth.Z, codes(fs), c.want, c.codes)
		}
		if m.Depth.DX != 5 || m.Depth.DY != 5 {
			t.Errorf("%s: cells %v x %v mm, want 5 x 5", c.name, m.Depth.DX, m.Depth.DY)
		}
	}
}

// bomb is a picture whose head states w x h pixels and whose data is a few bytes.
func bomb(w, h uint32) []byte {
	b := []byte(pngMark)
	chunk := func(kind string, data []byte) {
		b = binary.BigEndian.AppendUint32(b, uint32(len(data)))
		body := append([]byte(kind), data...)
		b = append(b, body...)
		b = binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(body))
	}
	head := binary.BigEndian.AppendUint32(nil, w)
	head = binary.BigEndian.AppendUint32(head, h)
	chunk("IHDR", append(head, 16, 0, 0, 0, 0))
	chunk("IDAT", []byte{0x78, 0x9c})
	chunk("IEND", nil)
	return b
}

func TestBadInput(t *testing.T) {
	good := encode(t, painted(image.NewGray(image.Rect(0, 0, 3, 3)), func(x, y int) color.Color { return color.Gray{Y: uint8(50 * x)} }))
	opt := Options{Length: 100, Depth: 30}
	long := "cell: 1\n" + strings.Repeat("1 ", maxSide+1) + "\n"
	tall := "cell: 1\n" + strings.Repeat("1 2\n", maxSide+1)
	for _, c := range []struct {
		name string
		data string
		opt  Options
		want string
	}{
		{"empty", "", opt, "m: height map is empty"},
		{"only remarks", "# nothing\n\n", opt, "m: the text grid has no rows"},
		{"a word", "1 2\n3 four\n", opt, `m:2:3: "four" is no number`},
		{"a decimal comma makes too many", "1.0 2.0\n1,0 2,0\n", opt, "m:2:5: row has more than the 2 values of the first row"},
		{"short row", "1 2 3\n4 5\n", opt, "m:2:4: row has 2 values, the first row has 3"},
		{"long row", "1 2\n3 4 5\n", opt, "m:2:5: row has more than the 2 values of the first row"},
		{"not a number", "1 2\nNaN 4\n", opt, `m:2:1: "NaN" is no number`},
		{"infinite", "1 2\n3 -Inf\n", opt, `m:2:3: "-Inf" is no number`},
		{"too large for a float", "1 2\n3 1e999\n", opt, `m:2:3: "1e999" is no number`},
		{"wrong unit", "unit: m\n1 2\n3 1000\n", opt, "m:3:3: a height of 1e+06 mm"},
		{"hexadecimal", "1 2\n3 0x10\n", opt, `m:2:3: "0x10" is no number`},
		{"unknown key", "colour: red\n1 2\n3 4\n", opt, `m:1:1, colour: unknown line "colour" above the rows`},
		{"bad cell", "cell: -4 mm\n1 2\n3 4\n", opt, `m:1:1, cell: "-4 mm" is no value for cell`},
		{"bad unit", "unit: furlong\n1 2\n3 4\n", opt, `m:1:1, unit: "furlong" is no value for unit`},
		{"bad kind of value", "values: both\n1 2\n3 4\n", opt, `m:1:1, values: "both" is no value for values`},
		{"key after the rows", "1 2\ncell: 4\n", opt, `m:2:1: "cell:" is no number`},
		{"columns that do not match", "ncols 3\nnrows 2\n1 2\n3 4\n", opt, "m: the file states 3 columns and 2 rows and has 2 and 2"},
		{"one row", "1 2 3\n", opt, "m: height map of 3 x 1 values"},
		{"one column", "1\n2\n3\n", opt, "m: height map of 1 x 3 values"},
		{"no size", "1 2\n3 4\n", Options{}, "m: the size of a cell is not known"},
		{"too many columns", long, opt, "m:2:8001: too many values: at most 4000 a side are read"},
		{"too many rows", tall, opt, "m:4002:3: more than 4000 rows"},
		{"another kind of picture", "\xff\xd8\xff\xe0\x00\x10JFIF\x00", opt, "m: neither a PNG picture nor a text grid"},
		{"picture cut short", string(good[:len(good)-20]), opt, "m: read picture: png: invalid format: unexpected EOF"},
		{"picture with a broken sum", string(good[:20]) + "zz" + string(good[22:]), opt, "m: read picture: png: invalid format: invalid checksum"},
		{"only a picture's mark", pngMark, opt, "m: read picture: unexpected EOF"},
		{"picture without a depth", string(good), Options{Length: 100}, "m: a picture has no depth of its own"},
		{"picture without a size", string(good), Options{Depth: 30}, "m: a picture has no size of its own"},
		{"picture bomb", string(bomb(60000, 60000)), opt, "m: height map of 60000 x 60000 values, at most 4000 a side are read"},
		{"long picture", string(bomb(4001, 2)), opt, "m: height map of 4001 x 2 values, at most 4000 a side are read"},
		{"negative length", "1 2\n3 4\n", Options{Length: -5}, "m: height map of -5 x 0 mm, 0 mm deep"},
		{"depth not a number", "1 2\n3 4\n", Options{Length: 5, Depth: -1}, "m: height map of 5 x 0 mm, -1 mm deep"},
	} {
		_, _, err := Read("m", []byte(c.data), c.opt)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s: error %v, want an *Error", c.name, err)
			continue
		}
		if err.Error() != c.want || e.Remedy == "" {
			t.Errorf("%s:\n got %v\nwant %s\nremedy %q", c.name, err, c.want, e.Remedy)
		}
	}
}

func TestFileTooLarge(t *testing.T) {
	_, _, err := Read("m", make([]byte, maxBytes+1), Options{Length: 100})
	if err == nil || !strings.Contains(err.Error(), "at most 64") {
		t.Errorf("error %v", err)
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"cell: 4 mm\n0 1\n2 3\n", "ncols 2\nnrows 2\ncellsize 1\nNODATA_value -9\n-9 1\n2 3\n", "values: height\nunit: in\n1,2;3\n4 5 6 # x\n", "\xef\xbb\xbf1 2\r\n3 4"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if bytes.HasPrefix(data, []byte(pngMark)) {
			return
		}
		checkRead(t, data, Options{Length: 100})
		checkRead(t, data, Options{Depth: 30, Invert: true})
	})
}

func FuzzPNG(f *testing.F) {
	box := image.Rect(0, 0, 3, 2)
	paint := func(x, y int) color.Color { return color.NRGBA{uint8(90 * x), uint8(80 * y), 7, uint8(255 - x)} }
	f.Add(encode(f, painted(image.NewGray(box), paint)))
	f.Add(encode(f, painted(image.NewGray16(box), paint)))
	f.Add(encode(f, painted(image.NewNRGBA(box), paint)))
	f.Add(bomb(60000, 60000))
	f.Fuzz(func(t *testing.T, data []byte) {
		checkRead(t, append([]byte(pngMark), bytes.TrimPrefix(data, []byte(pngMark))...), Options{Length: 100, Depth: 30})
	})
}

// checkRead asserts that a map is read whole, with sound depths, or not at all.
func checkRead(t *testing.T, data []byte, opt Options) {
	m, _, err := Read("m", data, opt)
	if err != nil {
		var e *Error
		if !errors.As(err, &e) || e.Text == "" || e.Remedy == "" {
			t.Fatalf("error %#v", err)
		}
		return
	}
	if len(m.Depth.Z) != m.Depth.Cols*m.Depth.Rows || m.Depth.Cols < 2 || m.Depth.Rows < 2 {
		t.Fatalf("%d depths of %d x %d nodes", len(m.Depth.Z), m.Depth.Cols, m.Depth.Rows)
	}
	for _, z := range m.Depth.Z {
		if !(z >= 0) || math.IsInf(z, 1) {
			t.Fatalf("depth %v", z)
		}
	}
}

func TestCraterReads(t *testing.T) {
	data, err := os.ReadFile("../../../examples/crater-table/crater.txt")
	if err != nil {
		t.Fatal(err)
	}
	m, fs, err := Read("crater.txt", data, Options{})
	if err != nil || len(fs) != 0 {
		t.Fatalf("%v, %v", err, fs)
	}
	if b := m.Depth.Box(); b.Width() != 560 || b.Height() != 560 {
		t.Errorf("size %v x %v mm", b.Width(), b.Height())
	}
}
