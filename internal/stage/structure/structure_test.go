package structure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

func bench() Input {
	return Input{
		ShellVolume: 20, ShellDensity: 2000,
		ResinVolume: 8, ResinDensity: 1100,
		FormMass: 30, FoamMass: 0.5,
		Extras: []Extra{{"cross support", 3}, {"inset base", 9}},
		People: 1,
	}
}

func ExampleCompute() {
	r, fs := Compute(bench())
	fmt.Printf("delivered %.1f kg, turned over at %.1f kg by %d\n", float64(r.Delivered), float64(r.Flip), r.Lifters)
	fmt.Println(fs[0].Text)
	// Output:
	// delivered 60.8 kg, turned over at 70.5 kg by 7
	// Turning the piece over in its form means 70.5 kg: the team rule asks for 7 people, this shop has 1, good for 23.0 kg.
}

func TestTeam(t *testing.T) {
	for _, c := range []struct {
		mass units.Mass
		want int
	}{{0, 0}, {-1, 0}, {1, 1}, {23, 1}, {23.1, 2}, {30.6, 2}, {31, 3}, {34.5, 3}, {34.6, 4}, {46, 4}, {46.1, 5}, {230, 20}} {
		if got := Team(c.mass, BestLift); got != c.want {
			t.Errorf("Team(%v) = %d, want %d", c.mass, got, c.want)
		}
	}
}

func TestTeamIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := units.Mass(rapid.Float64Range(0.1, 2000).Draw(t, "kg"))
		n := Team(m, BestLift)
		if Capacity(n, BestLift) < m*(1-1e-12) {
			t.Fatalf("%d people cannot lift %v kg", n, m)
		}
		if n > 1 && Capacity(n-1, BestLift) >= m {
			t.Fatalf("%d people already lift %v kg", n-1, m)
		}
	})
}

func TestMassBalance(t *testing.T) {
	r, _ := Compute(bench())
	if got := r.Shell + r.Resin + r.Extras; got != r.Delivered {
		t.Errorf("delivered %v, parts %v", r.Delivered, got)
	}
	if got := r.Shell + r.Form + r.Foam; got != r.Flip {
		t.Errorf("flip %v, parts %v", r.Flip, got)
	}
	if r.Shell != 40 || math.Abs(float64(r.Resin-8.8)) > 1e-12 || r.Extras != 12 {
		t.Errorf("masses %+v", r)
	}
}

func TestEnoughPeopleIsQuiet(t *testing.T) {
	in := Input{ShellVolume: 10, ShellDensity: 2000, People: 1}
	if _, fs := Compute(in); len(fs) != 0 {
		t.Errorf("findings for a 20 kg piece: %v", fs)
	}
	in.ShellVolume, in.People = 15, 2
	if r, fs := Compute(in); len(fs) != 0 || r.Lifters != 2 {
		t.Errorf("findings for 30 kg and two people: %v, %d", fs, r.Lifters)
	}
}

func TestFlipFindingNamesGearForLargeTeams(t *testing.T) {
	in := bench()
	in.People = 3
	_, fs := Compute(in)
	if len(fs) == 0 || fs[0].Code != "structure/flip-team" || fs[0].Severity != finding.Caution {
		t.Fatalf("want a flip caution, got %v", fs)
	}
	if !strings.Contains(fs[0].Remedy, "hoist") || fs[0].Limit != 34.5 || fs[0].Got != 70.5 {
		t.Errorf("finding %+v", fs[0])
	}
}

func TestBadInputIsCountedAsNothingAndSaid(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, in := range map[string]Input{
		"volume nan":       {ShellVolume: units.Volume(nan), ShellDensity: 2000},
		"volume negative":  {ShellVolume: -1, ShellDensity: 2000},
		"density missing":  {ShellVolume: 1},
		"density infinite": {ShellVolume: 1, ShellDensity: units.Density(inf)},
		"resin nan":        {ResinVolume: units.Volume(nan), ResinDensity: 1100},
		"form negative":    {FormMass: -3},
		"foam nan":         {FoamMass: units.Mass(nan)},
		"extra infinite":   {Extras: []Extra{{"plinth", units.Mass(inf)}}},
	} {
		r, fs := Compute(in)
		if worst, _ := finding.Worst(fs); worst != finding.Stop {
			t.Errorf("%s: findings %v, want a stop", name, fs)
		}
		for _, m := range []units.Mass{r.Shell, r.Resin, r.Delivered, r.Flip} {
			if !usable(float64(m)) {
				t.Errorf("%s: mass %v", name, m)
			}
		}
	}
}

func TestTubeRefusesWhatCannotBend(t *testing.T) {
	for _, c := range [][2]units.Length{{20, 0}, {20, -1}, {20, 6}, {0, 0}, {units.Length(math.NaN()), 2}, {20, units.Length(math.NaN())}, {units.Length(math.Inf(1)), 2}} {
		if s, err := Tube(c[0], c[1]); err == nil {
			t.Errorf("Tube(%v, %v) = %+v, want an error", c[0], c[1], s)
		}
	}
}
