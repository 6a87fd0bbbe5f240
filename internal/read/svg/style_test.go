package svg

import (
	"testing"

	"pourwright/internal/geom"
)

// TestFillRuleFollowsTheCascade reads the fill rule of one element by every way it can
// be set, and by which wins.
func TestFillRuleFollowsTheCascade(t *testing.T) {
	shape := func(attrs string) string { return `<rect id="r" class="a b" ` + attrs + ` width="9" height="9"/>` }
	for _, tt := range []struct {
		name, body string
		want       geom.FillRule
	}{
		{"nothing said", shape(``), geom.NonZero},
		{"attribute", shape(`fill-rule="evenodd"`), geom.EvenOdd},
		{"style attribute", shape(`style="fill:red; fill-rule : evenodd"`), geom.EvenOdd},
		{"inherited", `<g fill-rule="evenodd">` + shape(``) + `</g>`, geom.EvenOdd},
		{"inherited and undone", `<g fill-rule="evenodd">` + shape(`fill-rule="nonzero"`) + `</g>`, geom.NonZero},
		{"inherited by word", `<g fill-rule="evenodd">` + shape(`fill-rule="inherit"`) + `</g>`, geom.EvenOdd},
		{"element", `<style>rect{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"class", `<style>.b{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"id", `<style>#r{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"any", `<style>*{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"other class", `<style>.c{fill-rule:evenodd}</style>` + shape(``), geom.NonZero},
		{"compound", `<style>rect.a.b#r{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"compound of another element", `<style>path.a{fill-rule:evenodd}</style>` + shape(``), geom.NonZero},
		{"list", `<style>.x, .a{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"descendant", `<style>.w rect{fill-rule:evenodd}</style><g class="w"><g>` + shape(``) + `</g></g>`, geom.EvenOdd},
		{"child", `<style>.w>rect{fill-rule:evenodd}</style><g class="w"><g>` + shape(``) + `</g></g>`, geom.NonZero},
		{"sheet over attribute", `<style>rect{fill-rule:evenodd}</style>` + shape(`fill-rule="nonzero"`), geom.EvenOdd},
		{"style over sheet", `<style>#r{fill-rule:evenodd}</style>` + shape(`style="fill-rule:nonzero"`), geom.NonZero},
		{"important over style", `<style>rect{fill-rule:evenodd !important}</style>` + shape(`style="fill-rule:nonzero"`), geom.EvenOdd},
		{"id over class", `<style>#r{fill-rule:evenodd} .a.b{fill-rule:nonzero}</style>` + shape(``), geom.EvenOdd},
		{"later over earlier", `<style>.a{fill-rule:nonzero}.b{fill-rule:evenodd}</style>` + shape(``), geom.EvenOdd},
		{"comments and at-rules", `<style><![CDATA[/* } */ @import "x"; @media print { .a { fill-rule: nonzero } } .a{/**/fill-rule:evenodd}]]></style>` + shape(``), geom.EvenOdd},
		{"unclosed", `<style>.a{fill-rule:evenodd</style>` + shape(``), geom.EvenOdd},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, o := readOne(t, page100(tt.body), Options{})
			if o.FillRule != tt.want {
				t.Errorf("got %v, want %v", o.FillRule, tt.want)
			}
		})
	}
}

func TestHiddenIsNotRead(t *testing.T) {
	for _, body := range []string{
		`<rect display="none" width="9" height="9"/>`,
		`<rect style="display:none" width="9" height="9"/>`,
		`<style>.h{display:none}</style><g class="h"><rect width="9" height="9"/></g>`,
		`<g visibility="hidden"><rect width="9" height="9"/></g>`,
		`<defs><rect width="9" height="9"/></defs>`,
		`<clipPath><rect width="9" height="9"/></clipPath>`,
		`<pattern><rect width="9" height="9"/></pattern>`,
		`<other><rect width="9" height="9"/></other>`,
		`<o:g xmlns:o="http://example.org/o"><rect width="9" height="9"/></o:g>`,
	} {
		_, o := readOne(t, page100(body+`<g visibility="hidden"><rect id="seen" visibility="visible" width="5" height="5"/></g>`), Options{})
		if o.ID != "seen" {
			t.Errorf("%s: read %q", body, o.ID)
		}
	}
}
