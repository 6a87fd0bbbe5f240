package cli

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// inspected runs inspect on a file of the given text.
func inspected(t *testing.T, name, text string, flags ...string) (code int, out, errOut string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	var o, e bytes.Buffer
	code = Main(append([]string{"inspect", path}, flags...), &o, &e)
	return code, o.String(), e.String()
}

const fineProgram = "G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nX10 Y20\nG1 Z-3 F300\nX110 F1000\nG3 X110 Y40 I0 J10\nG0 Z5\nM2\n"

func TestInspectProgram(t *testing.T) {
	code, out, errOut := inspected(t, "a.nc", fineProgram)
	if code != exitFine || errOut != "" {
		t.Fatalf("exit %d: %s", code, errOut)
	}
	for _, want := range []string{"6 moves, 1 of them arcs", "units mm", "X 10.00 to 120.00", "deepest Z -3.00 mm", "300 (8 mm), 1000 (131 mm)", "not switched"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in:\n%s", want, out)
		}
	}
	var r programReport
	code, out, _ = inspected(t, "a.NC", fineProgram, "--json")
	if err := json.Unmarshal([]byte(out), &r); err != nil || code != exitFine {
		t.Fatalf("exit %d: %v", code, err)
	}
	if math.Abs(r.Program.Cut.MM()-(8+100+10*math.Pi)) > 1e-6 || r.Findings == nil || r.Program.Tools == nil {
		t.Errorf("got %+v", r)
	}
}

func TestInspectStrangeProgram(t *testing.T) {
	code, out, errOut := inspected(t, "b.ngc", strings.Replace(fineProgram, "X110 F1000", "X110 F1000 E4", 1))
	if code != exitError || !strings.Contains(errOut, "b.ngc:5:12: E4 is no word of RS-274.") || !strings.Contains(errOut, "hint: Look the word up") {
		t.Errorf("exit %d: %s", code, errOut)
	}
	if !strings.Contains(out, "2 lines could not be read") {
		t.Errorf("the rest is not shown:\n%s", out)
	}
	if code, out, _ = inspected(t, "c.tap", strings.Replace(fineProgram, "G1 Z-3 F300", "G0 Z-3", 1)); code != exitFine || !strings.Contains(out, "moves rapidly at Z -3.00 mm") {
		t.Errorf("exit %d:\n%s", code, out)
	}
	if code, _, errOut = inspected(t, "d.nc", ""); code != exitError || !strings.Contains(errOut, "ends without M2") {
		t.Errorf("exit %d: %s", code, errOut)
	}
}
