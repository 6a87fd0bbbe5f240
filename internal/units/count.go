package units

import "fmt"

// Count writes n with the word for one or for many: "1 sheet", "2 sheets", "0 sheets".
func Count(n int, one, many string) string {
	if n == 1 {
		return fmt.Sprintf("1 %s", one)
	}
	return fmt.Sprintf("%d %s", n, many)
}
