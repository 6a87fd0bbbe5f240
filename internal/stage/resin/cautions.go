package resin

import "fmt"

// cautions lists what the pour card says of safety; local rules and the data sheets come
// first. Common practice, no source.
func (c *computer) cautions(r *Result) []string {
	out := []string{
		"Resin and hardener sensitise the skin: nitrile gloves, not latex; goggles; fresh air. Wash with soap and water, never with solvent.",
		"Soak spilled hardener up with sand or clay, never with sawdust: it can catch fire.",
		"A bucket left standing can boil and smoke: pour at once, spread leftovers out thin, and take a hot one outside.",
	}
	if r.Cure.Computed && r.Cure.High > yellows {
		out = append(out, fmt.Sprintf("The pour may reach %.0f C: somebody stays near until it has peaked, with the door open, and nobody touches the dam.", r.Cure.High))
	}
	for _, l := range r.Lifts {
		if len(l.Torch) > 0 {
			out = append(out, "Flame over fresh resin: nothing that burns near, no solvent vapour, keep it moving a hand above.")
			break
		}
	}
	if r.Degas != nil {
		out = append(out, "A vacuum pot implodes where it is scratched or cracked: look at it first, goggles on, lid guarded.")
	}
	return append(out, "Data sheets, safety sheets and local rules come before this card.")
}
