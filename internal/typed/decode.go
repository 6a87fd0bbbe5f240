package typed

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"pourwright/internal/finding"
)

// Places says where each field path of a document stands: "basin.steps[2].depth".
type Places map[string]finding.Where

// At returns the place of path, or of the nearest group around it that is written,
// with the path as its field.
func (p Places) At(path string) finding.Where {
	for at := path; ; {
		if w, ok := p[at]; ok {
			w.Field = path
			return w
		}
		cut := strings.LastIndexAny(at, ".[")
		if cut < 0 {
			w := p[""]
			w.Field = path
			return w
		}
		at = at[:cut]
	}
}

// Decode reads data into the struct that into points to. Fields are named by yaml
// tags; kinds are text (any string type), lists of text (one scalar is a list of
// one), groups (structs), lists of groups and groups by name (maps). It returns
// false when the file could not be taken apart at all; every other fault leaves its
// field empty and is a finding.
func Decode(file string, data []byte, into any) (Places, []finding.Finding, bool) {
	d := &decoder{file: file, places: Places{"": {File: file, Line: 1, Column: 1}}}
	root, bad := parse(file, bytes.TrimPrefix(data, []byte("\ufeff"))) // a byte order mark, as some editors write
	if bad != nil {
		return d.places, []finding.Finding{*bad}, false
	}
	target := reflect.ValueOf(into).Elem()
	if _, ok := root.(ast.MapNode); !ok {
		d.say(wrongShape, root, "", "The file holds no fields, only %s.", describe(root))
		return d.places, d.found, false
	}
	d.value(root, "", target)
	return d.places, d.found, true
}

type decoder struct {
	file   string
	places Places
	found  []finding.Finding
}

func (d *decoder) where(n ast.Node, path string) finding.Where {
	line, column := place(start(n))
	return finding.Where{File: d.file, Line: line, Column: column, Field: path}
}

func (d *decoder) say(r finding.Rule, n ast.Node, path, format string, args ...any) *finding.Finding {
	d.found = append(d.found, r.At(d.where(n, path), format, args...))
	return &d.found[len(d.found)-1]
}

// start returns the first token of a node: a mapping's own token is its colon.
func start(n ast.Node) *token.Token {
	switch m := n.(type) {
	case *ast.MappingNode:
		if len(m.Values) > 0 && !m.IsFlowStyle {
			return start(m.Values[0].Key)
		}
	case *ast.MappingValueNode:
		return start(m.Key)
	}
	return n.GetToken()
}

// value reads node n into v, by v's kind.
func (d *decoder) value(n ast.Node, path string, v reflect.Value) {
	d.places[path] = d.where(n, path)
	if !d.plain(n, path) || n.Type() == ast.NullType {
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		d.value(n, path, p.Elem())
		v.Set(p)
	case reflect.String:
		if s, ok := d.scalar(n, path); ok {
			v.SetString(s)
		}
	case reflect.Slice:
		d.list(n, path, v)
	case reflect.Map:
		d.named(n, path, v)
	case reflect.Struct:
		d.group(n, path, v)
	}
}

// plain refuses anchors, aliases and tags.
func (d *decoder) plain(n ast.Node, path string) bool {
	switch n.Type() {
	case ast.AnchorType, ast.AliasType, ast.TagType, ast.MergeKeyType:
		d.say(notPlain, n, path, "%s is not read in a document.", describe(n))
		return false
	}
	return true
}

func (d *decoder) scalar(n ast.Node, path string) (string, bool) {
	switch s := n.(type) {
	case *ast.LiteralNode:
		return strings.TrimSpace(s.Value.Value), true
	case *ast.StringNode:
		return strings.TrimSpace(s.Value), true
	case ast.ScalarNode:
		return strings.TrimSpace(s.GetToken().Value), true
	}
	if text, ok := tight(n); ok {
		return text, true
	}
	d.say(wrongShape, n, path, "%s should be one value and is %s.", path, describe(n))
	return "", false
}

// tight joins what the parser took for a field inside a list: in [8:00-12:00] no
// space follows the colon, so it is text.
func tight(n ast.Node) (string, bool) {
	p, ok := n.(*ast.MappingValueNode)
	if m, isMap := n.(*ast.MappingNode); isMap && len(m.Values) == 1 {
		p, ok = m.Values[0], !m.IsFlowStyle
	}
	if !ok {
		return "", false
	}
	value, plain := p.Value.(ast.ScalarNode)
	if !plain || p.Value.Type() == ast.NullType {
		return "", false
	}
	key, colon, text := p.Key.GetToken(), p.Start, value.GetToken()
	if key.Position.Line != text.Position.Line || text.Position.Column != colon.Position.Column+1 || colon.Position.Column != key.Position.Column+len([]rune(key.Value)) {
		return "", false
	}
	return key.Value + ":" + text.Value, true
}

func (d *decoder) list(n ast.Node, path string, v reflect.Value) {
	elem := v.Type().Elem()
	seq, ok := n.(*ast.SequenceNode)
	if !ok {
		if _, isMap := n.(ast.MapNode); isMap {
			d.say(wrongShape, n, path, "%s should be a list and is %s.", path, describe(n)).Remedy = "begin every entry with a dash"
			return
		}
		if elem.Kind() != reflect.String {
			d.say(wrongShape, n, path, "%s should be a list and is %s.", path, describe(n))
			return
		}
		if s, ok := d.scalar(n, path); ok {
			v.Set(reflect.Append(v, reflect.ValueOf(s).Convert(elem)))
		}
		return
	}
	for i, item := range seq.Values {
		one := reflect.New(elem).Elem()
		d.value(item, fmt.Sprintf("%s[%d]", path, i), one)
		v.Set(reflect.Append(v, one))
	}
}

// pairs returns the fields of a mapping, or nil with a finding.
func (d *decoder) pairs(n ast.Node, path string) []*ast.MappingValueNode {
	switch m := n.(type) {
	case *ast.MappingNode:
		return m.Values
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{m}
	}
	d.say(wrongShape, n, path, "%s should be a group of fields and is %s.", name(path), describe(n))
	return nil
}

// key returns a field's name, or false with a finding.
func (d *decoder) key(p *ast.MappingValueNode, path string, seen map[string]bool) (string, bool) {
	if !d.plain(p.Key, path) {
		return "", false
	}
	if _, ok := p.Key.(ast.ScalarNode); !ok {
		d.say(wrongShape, p.Key, path, "A field's name is not plain text.")
		return "", false
	}
	key := p.Key.GetToken().Value
	if seen[key] {
		d.say(repeatedField, p.Key, join(path, key), "%s stands twice in %s.", key, name(path))
		return "", false
	}
	seen[key] = true
	return key, true
}

func (d *decoder) named(n ast.Node, path string, v reflect.Value) {
	v.Set(reflect.MakeMap(v.Type()))
	seen := map[string]bool{}
	for _, p := range d.pairs(n, path) {
		if key, ok := d.key(p, path, seen); ok {
			one := reflect.New(v.Type().Elem()).Elem()
			d.value(p.Value, join(path, key), one)
			d.places[join(path, key)] = d.where(p.Key, join(path, key))
			v.SetMapIndex(reflect.ValueOf(key), one)
		}
	}
}

func (d *decoder) group(n ast.Node, path string, v reflect.Value) {
	fields, scalar := fieldsOf(v.Type())
	if _, isMap := n.(ast.MapNode); !isMap && scalar >= 0 && n.Type() != ast.SequenceType {
		d.value(n, path, v.Field(scalar))
		return
	}
	names := make([]string, 0, len(fields))
	for f := range fields {
		names = append(names, f)
	}
	slices.Sort(names)
	seen := map[string]bool{}
	for _, p := range d.pairs(n, path) {
		key, ok := d.key(p, path, seen)
		if !ok {
			continue
		}
		i, known := fields[key]
		if !known {
			d.unknown(p.Key, key, path, names)
			continue
		}
		d.value(p.Value, join(path, key), v.Field(i))
	}
}

func (d *decoder) unknown(n ast.Node, key, path string, names []string) {
	f := d.say(unknownField, n, join(path, key), "%s has no field %q.", name(path), key)
	if s := Suggest(strings.ReplaceAll(key, "-", "_"), names); s != "" {
		f.Remedy = fmt.Sprintf("did you mean %s?", s)
		return
	}
	f.Remedy = "remove it; the fields here are " + strings.Join(names, ", ")
}

// fieldsOf maps the yaml names of a struct to field numbers, and names the field
// that a bare scalar fills, or -1.
func fieldsOf(t reflect.Type) (fields map[string]int, scalar int) {
	fields, scalar = map[string]int{}, -1
	for i := range t.NumField() {
		tag, options, _ := strings.Cut(t.Field(i).Tag.Get("yaml"), ",")
		if tag == "" || tag == "-" {
			continue
		}
		fields[tag] = i
		if strings.Contains(options, "scalar") {
			scalar = i
		}
	}
	return fields, scalar
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func name(path string) string {
	if path == "" {
		return "the document"
	}
	return path
}

// describe names a node's kind in plain words.
func describe(n ast.Node) string {
	switch n.Type() {
	case ast.MappingType, ast.MappingValueType:
		return "a group of fields"
	case ast.SequenceType:
		return "a list"
	case ast.NullType:
		return "nothing"
	case ast.AnchorType:
		return "an anchor (&)"
	case ast.AliasType:
		return "an alias (*)"
	case ast.TagType:
		return "a tag (!)"
	case ast.MergeKeyType:
		return "a merge (<<)"
	}
	return fmt.Sprintf("the text %q", clip(n.GetToken().Value))
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return s
}
