package knockout

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// byPosition orders polygons from left to right, then up, by the middle of their box
// to the millimetre: small changes of an outline do not rename its parts.
func byPosition(r geom.Region) geom.Region {
	out := slices.Clone(r)
	slices.SortStableFunc(out, func(a, b geom.Polygon) int { return place(a.Outer.Box(), b.Outer.Box()) })
	return out
}

func place(a, b geom.Box) int {
	p, q := a.Center(), b.Center()
	return cmp.Or(cmp.Compare(math.Round(p.X), math.Round(q.X)), cmp.Compare(math.Round(p.Y), math.Round(q.Y)))
}

// letters returns A, B ... Z, AA, AB ...
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + string(rune('A'+i%26))
}

// mark returns four hex digits of a part's shape and thickness, to 0.1 mm and wherever
// it lies: two parts of one mark are the same piece of foam.
func mark(r geom.Region, thickness units.Length) string {
	box := r.Box()
	tenth := func(v float64) int64 { return int64(math.Round(v * 10)) }
	var rings []string
	for _, ring := range r.Rings() {
		rings = append(rings, spelled(ring, func(p geom.Point) [2]int64 {
			return [2]int64{tenth(p.X - box.Min.X), tenth(p.Y - box.Min.Y)}
		}))
	}
	slices.Sort(rings)
	h := fnv.New32a()
	fmt.Fprint(h, tenth(thickness.MM()), rings)
	s := h.Sum32()
	return fmt.Sprintf("%04x", (s>>16)^(s&0xffff))
}

// spelled writes a ring from its lowest point on, repeated points left out.
func spelled(ring geom.Ring, tenths func(geom.Point) [2]int64) string {
	var ps [][2]int64
	for _, p := range ring {
		if q := tenths(p); len(ps) == 0 || ps[len(ps)-1] != q {
			ps = append(ps, q)
		}
	}
	for len(ps) > 1 && ps[0] == ps[len(ps)-1] {
		ps = ps[:len(ps)-1]
	}
	first := 0
	for i, p := range ps {
		if slices.Compare(p[:], ps[first][:]) < 0 {
			first = i
		}
	}
	return fmt.Sprint(ps[first:], ps[:first])
}

// A claim is a part that the document says is cut.
type claim struct{ text, id, mark, field string }

func claims(cut []string) []claim {
	var out []claim
	for i, t := range cut {
		id, m, _ := strings.Cut(strings.TrimSpace(t), "/")
		out = append(out, claim{t, strings.ToUpper(strings.TrimSpace(id)), strings.ToLower(strings.TrimSpace(m)), fmt.Sprintf("knockout.cut[%d]", i)})
	}
	return out
}

// name gives the parts of all layers their ids: those that are cut keep theirs, known
// by their mark; the others take the letters left over, from left to right.
func (c *computer) name() {
	cl := claims(c.in.Cut)
	taken := map[string]bool{}
	for _, k := range cl {
		if k.mark == "" {
			continue
		}
		for i := range c.r.Parts {
			p := &c.r.Parts[i]
			if p.ID == "" && p.Mark == k.mark && strings.HasPrefix(k.id, fmt.Sprintf("L%d-", p.Layer)) && !taken[k.id] {
				p.ID, p.Done, taken[k.id] = k.id, true, true
			}
		}
	}
	next := map[int]int{}
	for i := range c.r.Parts {
		p := &c.r.Parts[i]
		for p.ID == "" {
			if id := fmt.Sprintf("L%d-%s", p.Layer, letters(next[p.Layer])); !taken[id] {
				p.ID = id
			}
			next[p.Layer]++
		}
	}
	for _, k := range cl {
		c.claimed(k)
	}
}

// claimed marks a part cut, or says that it is no longer the one that was cut.
func (c *computer) claimed(k claim) {
	where := finding.Where{Element: k.id, Field: k.field}
	i := slices.IndexFunc(c.r.Parts, func(p Part) bool { return p.ID == k.id })
	switch {
	case i < 0:
		c.say(changed.At(where, "Part %s is cut, and this plan has no such part.", k.text).
			Do("Take it off knockout.cut, or undo what changed the layer."))
	case k.mark == "":
		c.r.Parts[i].Done = true
		c.say(changed.At(where, "Part %s is cut, but without its mark it cannot be known again if its outline changes.", k.id).As(finding.Note).
			Do("Write %s/%s, as it stands on the label.", k.id, c.r.Parts[i].Mark))
	case !c.r.Parts[i].Done:
		c.say(changed.At(where, "Part %s was cut with the mark %s; the plan now has it with the mark %s: its outline, holes or thickness changed.", k.id, k.mark, c.r.Parts[i].Mark).
			Do("Undo what changed it, or cut it anew and write %s/%s.", k.id, c.r.Parts[i].Mark))
	}
}
