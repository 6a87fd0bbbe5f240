package units

import "testing"

func TestCount(t *testing.T) {
	for _, c := range []struct {
		n    int
		want string
	}{{0, "0 batches"}, {1, "1 batch"}, {2, "2 batches"}, {-1, "-1 batches"}, {1000, "1000 batches"}} {
		if got := Count(c.n, "batch", "batches"); got != c.want {
			t.Errorf("Count(%d) = %q, want %q", c.n, got, c.want)
		}
	}
}
