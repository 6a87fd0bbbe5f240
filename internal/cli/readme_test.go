package cli

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

var word = regexp.MustCompile(`"[^"]*"|\S+`)

// TestReadmeCommands runs every command line of the README that calls the program.
func TestReadmeCommands(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir("../..")
	out, count := t.TempDir(), 0
	for _, line := range strings.Split(string(readme), "\n") {
		rest, ok := strings.CutPrefix(line, "go run ./cmd/pourwright ")
		if !ok {
			continue
		}
		args := word.FindAllString(rest, -1)
		for i, a := range args {
			args[i] = strings.Trim(a, `"`)
			if i > 0 && args[i-1] == "--out" {
				args[i] = out
			}
		}
		count++
		if code, text, errOut := call(t, args...); code != exitFine || len(text) < 100 {
			t.Errorf("%s: exit %d, %d bytes, %s", line, code, len(text), errOut)
		}
	}
	if count < 4 {
		t.Errorf("only %d command lines found in the README", count)
	}
}

// TestBadHeightMapKeepsItsPlace shows line and remedy of a height map's fault.
func TestBadHeightMapKeepsItsPlace(t *testing.T) {
	dir := t.TempDir()
	doc := "pourwright: 1\nname: Ragged\nunits: mm\nbox: {length: 400, width: 300, height: 300}\nshell: {thickness: 19}\nbasin:\n  height_map: m.txt\n  map: {length: 200, width: 200, depth: 25}\n"
	for name, text := range map[string]string{"piece.yaml": doc, "m.txt": "1 2 3\n4 5\n6 7 8\n"} {
		if err := os.WriteFile(dir+"/"+name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	code, out, errOut := call(t, "plan", dir+"/piece.yaml")
	if code != exitStop || !strings.Contains(out, "m.txt:2") || !strings.Contains(out, "long side") {
		t.Errorf("exit %d: %s\n%s", code, errOut, out)
	}
}
