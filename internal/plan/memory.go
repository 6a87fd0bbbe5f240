package plan

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"
	"reflect"
	"slices"
	"sync"

	"pourwright/internal/finding"
)

// mostKept is how many results of one stage are kept. Chosen: enough to step back and
// forth between a few ideas.
const mostKept = 8

// A Memory keeps results of stages by the hash of their Input, so that an edit
// computes only what it touches. It may be used by several computations at once; the
// results it hands out are shared and must not be written to. The zero Memory is ready.
type Memory struct {
	mu   sync.Mutex
	kept map[string][]remembered
}

type remembered struct {
	key    [sha256.Size]byte
	result any
	found  []finding.Finding
}

func (m *Memory) get(stage string, key [sha256.Size]byte) (remembered, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, r := range m.kept[stage] {
		if r.key == key {
			return r, true
		}
	}
	return remembered{}, false
}

func (m *Memory) put(stage string, r remembered) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.kept == nil {
		m.kept = map[string][]remembered{}
	}
	kept := append(m.kept[stage], r)
	if over := len(kept) - mostKept; over > 0 {
		kept = slices.Clone(kept[over:])
	}
	m.kept[stage] = kept
}

// remember returns what the stage computes from in, from memory where it was computed
// before. A computation cut short by the context is not kept.
func remember[I, R any](w *wiring, stage string, in I, compute func(I) (R, []finding.Finding)) (R, []finding.Finding) {
	if w.memory == nil {
		return compute(in)
	}
	key := fingerprint(in)
	if r, ok := w.memory.get(stage, key); ok {
		return r.result.(R), slices.Clone(r.found)
	}
	result, found := compute(in)
	if w.ctx.Err() == nil {
		w.memory.put(stage, remembered{key, result, slices.Clone(found)})
	}
	return result, found
}

// fingerprint hashes a value with all it holds: fields, also unexported ones, elements
// in order, map entries by key, what pointers point to. Functions and channels count as
// nothing: an Input holds none that change its result.
func fingerprint(v any) [sha256.Size]byte {
	p := printer{h: sha256.New()}
	p.value(reflect.ValueOf(v))
	p.flush()
	var out [sha256.Size]byte
	p.h.Sum(out[:0])
	return out
}

type printer struct {
	h   hash.Hash
	buf []byte
}

func (p *printer) flush() {
	p.h.Write(p.buf)
	p.buf = p.buf[:0]
}

func (p *printer) word(u uint64) {
	p.buf = binary.LittleEndian.AppendUint64(p.buf, u)
	if len(p.buf) > 1<<14 {
		p.flush()
	}
}

func (p *printer) value(v reflect.Value) {
	p.word(uint64(v.Kind()))
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			p.word(1)
		} else {
			p.word(0)
		}
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		p.word(uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uintptr:
		p.word(v.Uint())
	case reflect.Float32, reflect.Float64:
		p.word(math.Float64bits(v.Float()))
	case reflect.String:
		p.word(uint64(v.Len()))
		p.buf = append(p.buf, v.String()...)
	case reflect.Struct:
		for i := range v.NumField() {
			p.value(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		p.word(uint64(v.Len()))
		for i := range v.Len() {
			p.value(v.Index(i))
		}
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			p.word(0)
			return
		}
		p.buf = append(p.buf, v.Elem().Type().String()...)
		p.value(v.Elem())
	case reflect.Map:
		p.entries(v)
	}
}

// entries hashes a map by its sorted keys' own hashes.
func (p *printer) entries(v reflect.Value) {
	p.word(uint64(v.Len()))
	type entry struct {
		key [sha256.Size]byte
		at  reflect.Value
	}
	var all []entry
	for _, k := range v.MapKeys() {
		kp := printer{h: sha256.New()}
		kp.value(k)
		kp.flush()
		e := entry{at: v.MapIndex(k)}
		kp.h.Sum(e.key[:0])
		all = append(all, e)
	}
	slices.SortFunc(all, func(a, b entry) int { return slices.Compare(a.key[:], b.key[:]) })
	for _, e := range all {
		p.buf = append(p.buf, e.key[:]...)
		p.value(e.at)
	}
}
