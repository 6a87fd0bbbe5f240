package typed

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Encode writes the struct doc as YAML that Decode reads back to the same struct.
// Empty fields are left out; fields stand in the order of the struct, names of maps
// in alphabetical order.
func Encode(doc any) []byte {
	w := &writer{}
	w.group(reflect.ValueOf(doc), 0)
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

func (w *writer) line(depth int, format string, args ...any) {
	w.WriteString(strings.Repeat("  ", depth))
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

func (w *writer) group(v reflect.Value, depth int) {
	v = reflect.Indirect(v)
	for i := range v.NumField() {
		tag, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("yaml"), ",")
		if tag != "" && tag != "-" && !empty(v.Field(i)) {
			w.field(tag, v.Field(i), depth)
		}
	}
}

func (w *writer) field(tag string, v reflect.Value, depth int) {
	v = reflect.Indirect(v)
	switch v.Kind() {
	case reflect.String:
		w.line(depth, "%s: %s", quote(tag), quote(v.String()))
	case reflect.Slice:
		w.list(tag, v, depth)
	case reflect.Map:
		w.line(depth, "%s:", quote(tag))
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		for _, k := range keys {
			w.field(k.String(), v.MapIndex(k), depth+1)
		}
	case reflect.Struct:
		if empty(v) {
			w.line(depth, "%s: {}", quote(tag))
			return
		}
		w.line(depth, "%s:", quote(tag))
		w.group(v, depth+1)
	}
}

func (w *writer) list(tag string, v reflect.Value, depth int) {
	if v.Type().Elem().Kind() == reflect.String {
		parts := make([]string, v.Len())
		for i := range parts {
			parts[i] = quote(v.Index(i).String())
		}
		w.line(depth, "%s: [%s]", quote(tag), strings.Join(parts, ", "))
		return
	}
	w.line(depth, "%s:", quote(tag))
	for i := range v.Len() {
		one := &writer{}
		one.group(v.Index(i), depth+2)
		text := one.String()
		if text == "" {
			w.line(depth+1, "- {}")
			continue
		}
		indent := strings.Repeat("  ", depth+1)
		w.WriteString(indent + "- " + text[len(indent)+2:])
	}
}

// empty reports whether v holds no text at all.
func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Pointer:
		return v.IsNil()
	case reflect.Slice, reflect.Map, reflect.String:
		return v.Len() == 0
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).Tag.Get("yaml") != "" && !empty(v.Field(i)) {
				return false
			}
		}
		return true
	}
	return true
}

// quote leaves safe text bare and writes everything else in double quotes.
func quote(s string) string {
	if s != "" && strings.Trim(s, " ") == s && !strings.ContainsFunc(s, unsafe) && s[0] != '-' && s[0] != '.' && s[0] != '+' && !reserved[strings.ToLower(s)] {
		return s
	}
	return strconv.Quote(s)
}

func unsafe(r rune) bool {
	return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(" ._-/()", r))
}

var reserved = map[string]bool{"null": true, "~": true, "true": true, "false": true, "yes": true, "no": true, "on": true, "off": true, "y": true, "n": true}
