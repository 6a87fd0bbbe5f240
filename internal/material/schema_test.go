package material

import (
	"flag"
	"strings"
	"testing"

	"pourwright/internal/typed/schema"
)

var update = flag.Bool("update", false, "write docs/shelf.schema.json")

func TestSchema(t *testing.T) {
	got, err := schema.Of(&File{}, "A shelf of cards", map[string]string{".": "pourwright/internal/material"})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(got), "Greatest depth of one lift.") {
		t.Error("the schema does not document its fields")
	}
	schema.Golden(t, "shelf.schema.json", got, *update)
}
