package cutlist

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/saw"
)

// ruleOf is the rule of each fault; a part that is placed all the same stops nothing.
var ruleOf = map[saw.Fault]finding.Rule{
	saw.BadNumber: badPart, saw.BadStock: badStock, saw.NoStock: noStock, saw.KerfEats: kerf, saw.TrimEats: trim, saw.NeedsTurn: turn,
	saw.ZoneInWay: zone, saw.TooLarge: noStock, saw.OutOfStock: tooFew, saw.TooNarrow: hold, saw.TooMany: tooMany, saw.CutCannotBe: hold,
}

// sentences says every reason with its numbers and the nearest way out; sort is sheet
// or bar.
func sentences(reasons []saw.Reason, field string, kerfMM, trimMM float64, sort string) []finding.Finding {
	var out []finding.Finding
	for _, r := range reasons {
		rule, ok := ruleOf[r.Fault]
		if !ok {
			continue
		}
		if r.Fault == saw.KerfEats && r.Placed {
			rule = kerfCosts
		}
		f := rule.At(finding.Where{Field: field, Element: r.Piece}, "%s", text(r, kerfMM, trimMM, sort))
		if do := remedy(r, sort); do != "" {
			f = f.Do("%s", do)
		}
		out = append(out, f)
	}
	return out
}

// text says what is wrong.
func text(r saw.Reason, kerfMM, trimMM float64, sort string) string {
	piece := "The part " + r.Piece
	switch r.Fault {
	case saw.BadNumber:
		return fmt.Sprintf("%s of %s is %.1f, which is no size that can be cut.", r.Field, nameOr(r.Piece, "the saw"), r.Got)
	case saw.BadStock:
		return fmt.Sprintf("The stock %s has %s %.1f; it is left out.", r.Stock, r.Field, r.Got)
	case saw.NoStock:
		return fmt.Sprintf("There is no %s to cut %s from.", sort, nameOr(r.Piece, "the parts"))
	case saw.KerfEats:
		if r.Placed {
			return fmt.Sprintf("The kerf of %.1f mm costs a %s.", kerfMM, sort)
		}
		return fmt.Sprintf("%s fits without the saw's kerf of %.1f mm and not with it: %.1f mm short.", piece, kerfMM, r.ShortMM)
	case saw.TrimEats:
		return fmt.Sprintf("%s fits the untrimmed %s, and not with %.1f mm trimmed from every edge: %.1f mm short.", piece, sort, trimMM, r.ShortMM)
	case saw.NeedsTurn:
		return fmt.Sprintf("%s fits only across the grain.", piece)
	case saw.ZoneInWay:
		return fmt.Sprintf("%s fits only over a mark of %s.", piece, nameOr(r.Stock, "the stock"))
	case saw.TooLarge:
		return fmt.Sprintf("%s fits no %s: %.1f mm too large.", piece, sort, r.ShortMM)
	case saw.OutOfStock:
		return fmt.Sprintf("%s fits %s, but there is not enough of it.", piece, nameOr(r.Stock, "the stock"))
	case saw.TooNarrow:
		return fmt.Sprintf("%s is %.1f mm, and %.1f mm can be held.", piece, r.Got, r.LimitMM)
	case saw.TooMany:
		return fmt.Sprintf("The list has more than %d parts.", saw.Limit)
	case saw.CutCannotBe:
		return fmt.Sprintf("A cut for %s leaves no part of %.0f mm to hold against the fence.", nameOr(r.Piece, "a part"), r.LimitMM)
	}
	return string(r.Fault)
}

// remedy says the nearest way out; "" leaves the rule's own.
func remedy(r saw.Reason, sort string) string {
	switch r.Remedy {
	case saw.Join:
		return fmt.Sprintf("Join the part from %d with a batten behind the joint, or buy a %s of at least %s.", r.Parts, sort, extent(r))
	case saw.Buy:
		return fmt.Sprintf("Buy a %s of at least %s.", sort, extent(r))
	case saw.BuyMore:
		return fmt.Sprintf("Buy at least %d more of %s.", r.Parts, nameOr(r.Stock, "the stock"))
	case saw.TurnPiece:
		return "Let the part turn on the sheet."
	case saw.ThinnerKerf:
		if r.LimitMM <= 0 {
			return fmt.Sprintf("No blade is thin enough: buy one %s more.", sort)
		}
		return fmt.Sprintf("Use a blade of %.1f mm or thinner.", r.LimitMM)
	case saw.LessTrim:
		return fmt.Sprintf("Trim %.1f mm less in all.", r.ShortMM)
	}
	return ""
}

func extent(r saw.Reason) string {
	if r.WidthMM > 0 {
		return fmt.Sprintf("%.0f x %.0f mm", r.LengthMM, r.WidthMM)
	}
	return fmt.Sprintf("%.0f mm", r.LengthMM)
}

func nameOr(name, other string) string {
	if name == "" {
		return other
	}
	return name
}
