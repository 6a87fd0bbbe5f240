package archtest

import (
	"bufio"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "pourwright/"

// impure are the packages through which the outside world comes in.
var impure = []string{"os", "net", "net/http", "log", "log/slog", "math/rand", "math/rand/v2", "database/sql", "os/exec"}

// clock are the functions of package time that read it.
var clock = []string{"Now", "Since", "Until", "Sleep", "After", "Tick", "NewTimer", "NewTicker", "AfterFunc", "Local"}

// A policy is one row of the table in ARCHITECTURE.md.
type policy struct {
	room  string
	pure  bool
	allow []string
}

func readPolicies(t *testing.T) []policy {
	t.Helper()
	f, err := os.Open("../../ARCHITECTURE.md")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []policy
	inTable := false
	for sc := bufio.NewScanner(f); sc.Scan(); {
		line := sc.Text()
		switch {
		case strings.HasPrefix(line, "| room | pure |"):
			inTable = true
		case inTable && strings.HasPrefix(line, "|---"):
		case inTable && strings.HasPrefix(line, "|"):
			cells := strings.Split(strings.Trim(line, "|"), "|")
			p := policy{room: strings.TrimSpace(cells[0]), pure: strings.TrimSpace(cells[1]) == "yes"}
			for _, a := range strings.Split(cells[2], ",") {
				if a = strings.TrimSpace(a); a != "" {
					p.allow = append(p.allow, a)
				}
			}
			out = append(out, p)
		case inTable:
			return out
		}
	}
	return out
}

// rule returns the row for a room, the exact name before the pattern.
func rule(ps []policy, room string) (policy, bool) {
	for _, exact := range []bool{true, false} {
		for _, p := range ps {
			if ok, _ := path.Match(p.room, room); ok && (p.room == room) == exact {
				return p, true
			}
		}
	}
	return policy{}, false
}

func allowed(p policy, target string) bool {
	return slices.ContainsFunc(p.allow, func(a string) bool {
		ok, _ := path.Match(a, target)
		return ok || a == "*"
	})
}

// TestImports holds every import of the program's own source against the table.
func TestImports(t *testing.T) {
	ps := readPolicies(t)
	if len(ps) < 10 {
		t.Fatalf("only %d rows found in ARCHITECTURE.md", len(ps))
	}
	files := 0
	walk(t, "..", func(room, file string, imports []string) {
		if strings.HasSuffix(file, "_test.go") {
			return
		}
		files++
		p, ok := rule(ps, room)
		if !ok {
			t.Errorf("%s: room %q has no row in ARCHITECTURE.md", file, room)
			return
		}
		for _, imp := range imports {
			target, own := strings.CutPrefix(imp, module)
			target = strings.TrimPrefix(target, "internal/")
			switch {
			case own && !allowed(p, target):
				t.Errorf("%s: %s may not import %s", file, room, target)
			case !own && p.pure && slices.Contains(impure, imp):
				t.Errorf("%s: %s is pure and may not import %s", file, room, imp)
			}
		}
	})
	if files < 30 {
		t.Fatalf("only %d source files seen", files)
	}
}

// TestPolicyBites makes sure that the rules can fail at all.
func TestPolicyBites(t *testing.T) {
	ps := readPolicies(t)
	stage, ok := rule(ps, "stage/resin")
	if !ok || !stage.pure || allowed(stage, "stage/concrete") || allowed(stage, "job") || !allowed(stage, "units") {
		t.Errorf("stage/resin: the table lets a stage import a stage or the job, or forbids units: %+v", stage)
	}
	if pdf, ok := rule(ps, "render/pdf"); !ok || allowed(pdf, "job") {
		t.Errorf("render/pdf: a renderer may import job: %+v", pdf)
	}
}

// TestNoClock keeps the pure rooms from reading the clock: dates are arithmetic,
// now is not.
func TestNoClock(t *testing.T) {
	ps := readPolicies(t)
	walk(t, "..", func(room, file string, imports []string) {
		p, _ := rule(ps, room)
		if !p.pure || strings.HasSuffix(file, "_test.go") || !slices.Contains(imports, "time") {
			return
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains(clock, s.Sel.Name) {
					t.Errorf("%s: %s is pure and may not call time.%s", file, room, s.Sel.Name)
				}
			}
			return true
		})
	})
}

// TestNames keeps packages named after the trade.
func TestNames(t *testing.T) {
	walk(t, "..", func(room, file string, _ []string) {
		switch path.Base(room) {
		case "util", "utils", "common", "helpers", "misc", "shared", "base64":
			t.Errorf("%s: a package is named after what it is for, not %q", file, path.Base(room))
		}
	})
}

// walk calls visit for every Go file under root with its room and imports.
func walk(t *testing.T, root string, visit func(room, file string, imports []string)) {
	t.Helper()
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, filepath.Dir(file))
		if err != nil {
			return err
		}
		var imports []string
		for _, imp := range parsed.Imports {
			p, err := strconv.Unquote(imp.Path.Value)
			if err != nil {
				return err
			}
			imports = append(imports, p)
		}
		visit(filepath.ToSlash(rel), file, imports)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
