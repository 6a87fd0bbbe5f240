package typed

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"pourwright/internal/finding"
)

// parse turns the file into its root mapping; the finding says why it cannot.
func parse(file string, data []byte) (ast.Node, *finding.Finding) {
	if f := limits(file, data); f != nil {
		return nil, f
	}
	tree, err := safely(data)
	if err != nil {
		return nil, syntax(file, err)
	}
	var root ast.Node
	for _, d := range tree.Docs {
		switch {
		case d.Body == nil:
		case d.Body.Type() == ast.DirectiveType:
			return nil, refuse(file, d.Body.GetToken(), "A directive is not read.", "remove the line")
		case root != nil:
			return nil, refuse(file, d.Body.GetToken(), "The file holds a second document.", "keep one document in a file and remove the line of dashes")
		default:
			root = d.Body
		}
	}
	if root == nil {
		f := notYAML.At(finding.Where{File: file, Line: 1, Column: 1}, "The file is empty.").Do("write at least name, box, shell and basin")
		return nil, &f
	}
	return root, nil
}

// limits refuses what would take the parser long or deep.
func limits(file string, data []byte) *finding.Finding {
	say := func(line int, format string, args ...any) *finding.Finding {
		f := tooLarge.At(finding.Where{File: file, Line: line}, format, args...)
		return &f
	}
	if len(data) > MaxBytes {
		return say(0, "The file has %d bytes; the limit is %d.", len(data), MaxBytes)
	}
	if !utf8.Valid(data) {
		f := notYAML.At(finding.Where{File: file}, "The file is not text in UTF-8.").Do("save it as plain text in UTF-8")
		return &f
	}
	fields, depth := 0, 0
	for n, line := range strings.Split(string(data), "\n") {
		lead := 0
		inLead := true
		for i := 0; i < len(line); i++ {
			switch c := line[i]; c {
			case ':', ',', '-', '&', '*', '!', '?', '"', '\'', '|', '>', '%', '@', '`', '<':
				fields++
			case '[', '{':
				fields++
				depth++
			case ']', '}':
				fields++
				depth = max(0, depth-1)
			}
			if inLead && (line[i] == '-' || line[i] == '?') {
				lead++
			} else if line[i] != ' ' {
				inLead = false
			}
		}
		if depth > MaxDepth || lead > MaxDepth && strings.Contains(line, "- ") {
			return say(n+1, "Lists or groups stand more than %d deep in one another.", MaxDepth)
		}
		if fields > MaxFields {
			return say(n+1, "The file has more than %d fields and marks.", MaxFields)
		}
	}
	return nil
}

// safely parses and turns a panic of the parser into an error: bad input must never
// end the program.
func safely(data []byte) (tree *ast.File, err error) {
	defer func() {
		if p := recover(); p != nil {
			tree, err = nil, fmt.Errorf("not readable as YAML: %v", p)
		}
	}()
	return parser.ParseBytes(data, 0, parser.AllowDuplicateMapKey())
}

func syntax(file string, err error) *finding.Finding {
	where := finding.Where{File: file}
	message := err.Error()
	var se *yaml.SyntaxError
	if errors.As(err, &se) {
		message = se.Message
		if se.Token != nil {
			where.Line, where.Column = place(se.Token)
		}
	}
	if message == "" {
		message = "not readable as YAML"
	}
	f := notYAML.At(where, "The file is not YAML: %s.", message)
	return &f
}

func refuse(file string, tk *token.Token, text, remedy string) *finding.Finding {
	line, column := place(tk)
	f := notPlain.At(finding.Where{File: file, Line: line, Column: column}, "%s", text).Do("%s", remedy)
	return &f
}

func place(tk *token.Token) (line, column int) {
	if tk == nil || tk.Position == nil {
		return 0, 0
	}
	return tk.Position.Line, tk.Position.Column
}
