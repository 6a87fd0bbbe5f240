package svg

import "fmt"

var sprintf = fmt.Sprintf

// clip shortens what a file says before it is repeated to the maker.
func clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "..."
	}
	return s
}
