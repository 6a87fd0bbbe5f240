package typed

import (
	"slices"
	"strings"
)

// Suggest returns the candidate nearest to word, or "" when none is near: at most a
// third of the letters may differ, or one text begins the other. Of equals the
// first in alphabetical order is returned.
func Suggest(word string, candidates []string) string {
	word = strings.ToLower(strings.TrimSpace(word))
	if word == "" || len(word) > 80 {
		return ""
	}
	sorted := slices.Sorted(slices.Values(candidates))
	best, least := "", 1<<30
	for _, c := range sorted {
		l := strings.ToLower(c)
		d := distance([]rune(word), []rune(l))
		if len(word) >= 4 && (strings.HasPrefix(l, word) || strings.HasPrefix(word, l)) {
			d = min(d, 1)
		}
		if d < least && d <= max(1, max(len(word), len(l))/3) {
			best, least = c, d
		}
	}
	return best
}

// distance counts the edits from a to b, a swap of neighbours being one.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
