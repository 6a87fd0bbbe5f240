package job

import (
	"slices"
	"strings"
	"testing"
)

func TestPeopleAndDaysOff(t *testing.T) {
	j, found := resolve(t, tiny+`shop:
  start: 2027-03-01
  hours: {mon: 8-17, tue: 8-17}
  closed: [2027-03-08, 2027-02-27 to 2027-03-02, 2027-03-01]
  people:
    - {name: Ina, hours: {mon: "6:30-12:00"}, away: 2028-02-28 to 2028-03-01}
    - {name: Jon}
`)
	for _, f := range found {
		if strings.HasPrefix(f.Where.Field, "shop.closed") || strings.HasPrefix(f.Where.Field, "shop.people") {
			t.Error(f)
		}
	}
	if want := []string{"2027-02-27", "2027-02-28", "2027-03-01", "2027-03-02", "2027-03-08"}; !slices.Equal(j.Shop.Closed, want) {
		t.Errorf("closed %v, want %v", j.Shop.Closed, want)
	}
	p := j.Shop.People
	if len(p) != 2 || p[0].Name != "Ina" || p[1].Name != "Jon" {
		t.Fatalf("people %v", p)
	}
	if want := []string{"2028-02-28", "2028-02-29", "2028-03-01"}; !slices.Equal(p[0].Away, want) {
		t.Errorf("away %v, want %v", p[0].Away, want)
	}
	if h := p[0].Hours; len(h[0]) != 1 || h[0][0] != (Span{6.5, 12}) || len(h[1]) != 0 {
		t.Errorf("hours %v", h)
	}
	if p[1].Hours[1][0] != (Span{8, 17}) {
		t.Errorf("who states no hours keeps %v", p[1].Hours)
	}
}
