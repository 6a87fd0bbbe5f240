package job

import (
	"fmt"
	"math"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// box reads the outer box and reports whether it can be drawn.
func (r *resolver) box() bool {
	b, j := r.doc.Box, r.job
	whole := true
	for _, s := range []struct {
		field string
		text  typed.Length
		into  *units.Length
		span  likely
	}{
		{"box.length", b.Length, &j.Length, likelyLength},
		{"box.width", b.Width, &j.Width, likelyWidth},
		{"box.height", b.Height, &j.Height, likelyHeight},
	} {
		if s.text == "" {
			r.missing(s.field, "write box: with length, width and height")
			whole = false
			continue
		}
		before := len(r.found)
		l, ok := r.length(s.field, s.text, 0, s.span)
		if !ok && r.found[before].Code == wrongUnit.Code {
			l = units.Length(r.found[before].Got) // drawn as it reads; the finding stops the work
		}
		*s.into = l
		whole = whole && l > 0 && l <= 20*s.span.high
	}
	return whole
}

// shell reads the coats; without coats, the thickness is a face coat and backers.
func (r *resolver) shell() {
	s, j := r.doc.Shell, r.job
	stated, ok := r.length("shell.thickness", s.Thickness, 0, likelyShell)
	if len(s.Coats) == 0 {
		if stated == 0 {
			if ok {
				r.missing("shell.thickness", "write shell: with thickness, for example 19 mm, or coats")
			}
			stated = defaultShell
		}
		j.Coats = usualCoats(stated)
		for i := range j.Coats {
			name := defaultBacker
			if i == 0 {
				name = defaultFaceMix
			}
			j.Coats[i].Mix = card(r, "shell", "", name, r.shelf.Mix)
		}
		return
	}
	for i, c := range s.Coats {
		r.coat(i, c)
	}
	if sum := j.Shell(); stated > 0 && math.Abs(float64(sum-stated)) > float64(coatTolerance) {
		f := r.say(coatSum, "shell.thickness", "The coats add up to %s and the shell is %s; the coats are used.", units.FormatMM(sum, 2), units.FormatMM(stated, 2))
		f.Got, f.Limit, f.Unit = sum.MM(), stated.MM(), "mm"
	}
}

func (r *resolver) coat(i int, c CoatText) {
	path := fmt.Sprintf("shell.coats[%d]", i)
	standard, usual, name := mostBacker, defaultBacker, fmt.Sprintf("backer %d", i)
	if i == 0 {
		standard, usual, name = defaultFace, defaultFaceMix, "face"
	}
	if c.Thickness == "" {
		r.missing(path+".thickness", "write the coat's thickness")
	}
	if c.Name != "" {
		name = string(c.Name)
	}
	t, _ := r.length(path+".thickness", c.Thickness, standard, likelyCoat)
	mix := card(r, path+".mix", c.Mix, usual, r.shelf.Mix)
	if i == 0 && mix.Use == "backer" || i > 0 && mix.Use == "face" {
		r.say(coatMix, path+".mix", "Coat %d (%s) is made of %s, a mix for the %s.", i+1, name, mix.Name, mix.Use)
	}
	r.job.Coats = append(r.job.Coats, Coat{Name: name, Thickness: t, Mix: mix})
}

// usualCoats splits a shell into a face coat and equal backers.
func usualCoats(shell units.Length) []Coat {
	face := min(defaultFace, shell)
	coats := []Coat{{Name: "face", Thickness: face}}
	rest := shell - face
	if rest <= 0 {
		return coats
	}
	n := int(math.Ceil(float64(rest/mostBacker) - 1e-9))
	for i := range n {
		coats = append(coats, Coat{Name: fmt.Sprintf("backer %d", i+1), Thickness: rest / units.Length(n)})
	}
	return coats
}

// shellFits reports whether the shell leaves a hollow in the box.
func (r *resolver) shellFits() bool {
	j := r.job
	t := j.Shell()
	if t < j.Height && 2*t < j.Length && 2*t < j.Width {
		return true
	}
	f := r.say(shellTooThick, "shell", "A shell of %s does not fit into a box of %s x %s x %s.", units.FormatMM(t, 1),
		units.FormatMM(j.Length, 1), units.FormatMM(j.Width, 1), units.FormatMM(j.Height, 1))
	f.Got, f.Limit, f.Unit = t.MM(), min(j.Height, j.Length/2, j.Width/2).MM(), "mm"
	return false
}
