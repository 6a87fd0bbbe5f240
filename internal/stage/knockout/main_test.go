package knockout

import (
	"flag"
	"os"
	"testing"
)

// TestMain has every law tried on a few plans: each case computes a whole knockout.
// -rapid.checks asks for more.
func TestMain(m *testing.M) {
	flag.Parse()
	set := false
	flag.Visit(func(f *flag.Flag) { set = set || f.Name == "rapid.checks" })
	if !set {
		_ = flag.Set("rapid.checks", "20")
	}
	os.Exit(m.Run())
}
