package job

import (
	"flag"
	"strings"
	"testing"

	"pourwright/internal/typed/schema"
)

var update = flag.Bool("update", false, "write docs/piece.schema.json")

func TestSchema(t *testing.T) {
	got, err := schema.Of(&Document{}, "A piece", map[string]string{".": "pourwright/internal/job", "../material": "pourwright/internal/material"})
	if err != nil {
		t.Fatal(err)
	}
	for _, doc := range []string{"Outer box of the finished piece.", "Poured above the rim level, to be sanded off. Default 1 mm."} {
		if !strings.Contains(string(got), doc) {
			t.Errorf("the schema does not say %q", doc)
		}
	}
	schema.Golden(t, "piece.schema.json", got, *update)
}
