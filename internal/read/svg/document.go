package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"pourwright/internal/finding"
)

const svgNamespace = "http://www.w3.org/2000/svg"

// A node is an element of the file.
type node struct {
	name       string
	attrs      []attr
	parent     *node
	children   []*node
	text       []byte // of style elements only
	line, col  int
	start, end int // of the start tag in the file, bytes
	number     int // among the elements of its name, from 1
	style      *style
}

type attr struct{ name, value string }

// get returns the value of an attribute, or "".
func (n *node) get(name string) string {
	v, _ := n.lookup(name)
	return v
}

func (n *node) lookup(name string) (string, bool) {
	for _, a := range n.attrs {
		if a.name == name {
			return a.value, true
		}
	}
	return "", false
}

func (n *node) id() string { return strings.TrimSpace(n.get("id")) }

// label returns the name a drawing program shows for the element, or "".
func (n *node) label() string { return n.get("label") }

// classes returns the classes of the element, as far as a long kilobyte holds them.
func (n *node) classes() []string {
	text := n.get("class")
	return strings.Fields(text[:min(len(text), 4096)])
}

// A document is the file as a tree.
type document struct {
	file   string
	data   []byte
	root   *node
	byID   map[string]*node
	styles []*node
	count  int
	names  map[string]int // elements of each name
}

func (d *document) where(n *node) finding.Where {
	w := finding.Where{File: d.file, Line: n.line, Column: n.col, Element: n.id()}
	if w.Element == "" {
		w.Element = n.name
	}
	return w
}

// A parser builds a document.
type parser struct {
	doc    *document
	dec    *xml.Decoder
	lim    Limits
	notes  *notebook
	open   *node
	depth  int
	styles int // bytes of style sheets so far
	skip   int // depth at which a foreign element began; 0 outside one
}

// parse reads data into a tree. It never expands an entity and never opens a file.
func parse(file string, data []byte, lim Limits, notes *notebook) (*document, error) {
	data, err := plainText(file, data, lim)
	if err != nil {
		return nil, err
	}
	p := &parser{doc: &document{file: file, data: data, byID: map[string]*node{}, names: map[string]int{}}, lim: lim, notes: notes}
	p.dec = xml.NewDecoder(bytes.NewReader(data))
	p.dec.Strict = false
	p.dec.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil }
	for {
		start := int(p.dec.InputOffset())
		line, col := p.dec.InputPos()
		t, err := p.dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, p.broken(err)
		}
		if err := p.token(t, start, line, col); err != nil {
			return nil, err
		}
	}
	if p.doc.root == nil {
		return nil, p.fail(ruleNotSVG, 1, 1, "the file holds no element")
	}
	return p.doc, nil
}

func (p *parser) fail(r finding.Rule, line, col int, text string) error {
	return &Error{Rule: r, Where: finding.Where{File: p.doc.file, Line: line, Column: col}, Text: text}
}

func (p *parser) broken(err error) error {
	line, col := p.dec.InputPos()
	text := err.Error()
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		text = syntax.Msg
	}
	if p.doc.root == nil {
		return p.fail(ruleNotSVG, line, col, "this is not an SVG drawing: "+text)
	}
	return p.fail(ruleNotXML, line, col, "the file cannot be read beyond this place: "+text)
}

func (p *parser) token(t xml.Token, start, line, col int) error {
	switch t := t.(type) {
	case xml.StartElement:
		return p.begin(t, start, line, col)
	case xml.EndElement:
		p.finish()
	case xml.CharData:
		return p.chars(t, line, col)
	case xml.ProcInst:
		if t.Target == "xml-stylesheet" {
			p.notes.add(ruleStyle.At(finding.Where{File: p.doc.file, Line: line, Column: col}, "a style sheet outside the file is not read"))
		}
	}
	return nil
}

func (p *parser) begin(t xml.StartElement, start, line, col int) error {
	p.depth++
	p.doc.count++
	if p.depth > p.lim.Depth {
		return p.fail(ruleTooDeep, line, col, sprintf("elements are nested more than %d deep", p.lim.Depth))
	}
	if p.doc.count > p.lim.Elements {
		return p.fail(ruleTooMany, line, col, sprintf("the file holds more than %d elements", p.lim.Elements))
	}
	if p.skip > 0 {
		return nil
	}
	if p.doc.root == nil && (t.Name.Local != "svg" || !isSVG(t.Name.Space)) {
		return p.fail(ruleNotSVG, line, col, sprintf("the file begins with <%s>, not <svg>", clip(t.Name.Local)))
	}
	if !isSVG(t.Name.Space) || p.doc.root != nil && p.open == nil {
		p.skip = p.depth
		return nil
	}
	n := &node{name: t.Name.Local, parent: p.open, line: line, col: col, start: start, end: int(p.dec.InputOffset())}
	n.attrs = keepAttrs(t.Attr)
	p.doc.names[n.name]++
	n.number = p.doc.names[n.name]
	p.attach(n)
	return nil
}

func (p *parser) attach(n *node) {
	if p.open == nil {
		p.doc.root = n
	} else {
		p.open.children = append(p.open.children, n)
	}
	p.open = n
	if n.name == "style" {
		p.doc.styles = append(p.doc.styles, n)
	}
	id := n.id()
	if id == "" {
		return
	}
	if first, taken := p.doc.byID[id]; taken {
		p.notes.add(ruleSameID.At(p.doc.where(n), "the id %q is already that of the element in line %d", clip(id), first.line))
		return
	}
	p.doc.byID[id] = n
}

func (p *parser) finish() {
	if p.depth--; p.skip > 0 {
		if p.depth < p.skip {
			p.skip = 0
		}
		return
	}
	if p.open != nil {
		p.open = p.open.parent
	}
}

// chars keeps the text of style sheets and tells of entity references where
// elements could stand behind them.
func (p *parser) chars(t xml.CharData, line, col int) error {
	if p.skip > 0 || p.open == nil {
		return nil
	}
	switch p.open.name {
	case "style":
		if p.styles += len(t); p.styles > mostStyle {
			return p.fail(ruleTooMuchWork, line, col, sprintf("the style sheets hold more than %d bytes", mostStyle))
		}
		p.open.text = append(p.open.text, t...)
	case "svg", "g", "a", "defs", "symbol", "switch":
		if name := entityIn(string(t)); name != "" {
			w := finding.Where{File: p.doc.file, Line: line, Column: col, Element: p.doc.where(p.open).Element}
			p.notes.add(ruleEntity.At(w, "the entity &%s; is not expanded, so whatever it stands for is missing", clip(name)))
		}
	}
	return nil
}

// mostStyle is the size of all style sheets together, bytes. Chosen: a hundred times
// what a drawing program writes.
const mostStyle = 1 << 20

// entityIn returns the name of the first entity reference in s, or "".
func entityIn(s string) string {
	_, after, found := strings.Cut(s, "&")
	if !found {
		return ""
	}
	name, _, found := strings.Cut(after, ";")
	if !found || name == "" || strings.ContainsAny(name, " \t\r\n&<") {
		return ""
	}
	return name
}

// isSVG reports whether an element of a namespace is one of SVG. Files with no
// namespace, or one behind an entity, are taken at their word.
func isSVG(space string) bool {
	return space == svgNamespace || space == "" || space == "svg" || strings.HasPrefix(space, "&")
}

// keepAttrs keeps the attributes of SVG itself, the reference of a use, and the
// name that drawing programs show for a layer.
func keepAttrs(in []xml.Attr) []attr {
	out := make([]attr, 0, len(in))
	place := map[string]int{}
	for _, a := range in {
		name := a.Name.Local
		switch {
		case a.Name.Space == "xmlns" || name == "xmlns":
			continue
		case name == "data-name":
			name = "label"
		case a.Name.Space != "" && name != "href" && name != "label":
			continue
		}
		if i, seen := place[name]; !seen {
			place[name] = len(out)
			out = append(out, attr{name, a.Value})
		} else if name == "href" && a.Name.Space == "" {
			out[i].value = a.Value
		}
	}
	return out
}

// plainText returns data as UTF-8 within the limits, or says why it is not.
func plainText(file string, data []byte, lim Limits) ([]byte, error) {
	fail := func(r finding.Rule, format string, args ...any) error {
		return &Error{Rule: r, Where: finding.Where{File: file, Line: 1, Column: 1}, Text: sprintf(format, args...)}
	}
	if len(data) > lim.Bytes {
		return nil, fail(ruleTooLarge, "the file has %d bytes; %d is the most that is read", len(data), lim.Bytes)
	}
	switch {
	case bytes.HasPrefix(data, []byte{0x1f, 0x8b}):
		return nil, fail(ruleCompressed, "the file is compressed")
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}), bytes.HasPrefix(data, []byte{0xfe, 0xff}), bytes.IndexByte(data[:min(len(data), 64)], 0) >= 0:
		return nil, fail(ruleEncoding, "the file is text in UTF-16 or not text at all")
	}
	data = bytes.TrimPrefix(data, []byte{0xef, 0xbb, 0xbf})
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, fail(ruleNotSVG, "the file is empty")
	}
	if !utf8.Valid(data) {
		data = fromLatin1(data)
	}
	if n := crowdedTag(data, lim.Attributes); n > 0 {
		line := 1 + bytes.Count(data[:n], []byte("\n"))
		return nil, &Error{Rule: ruleTooMany, Where: finding.Where{File: file, Line: line, Column: 1},
			Text: sprintf("an element has more than %d attributes", lim.Attributes)}
	}
	return data, nil
}

// fromLatin1 reads bytes as ISO 8859-1, which leaves every byte that matters to a
// drawing as it is.
func fromLatin1(data []byte) []byte {
	out := make([]byte, 0, len(data)+len(data)/8)
	for _, b := range data {
		out = utf8.AppendRune(out, rune(b))
	}
	return out
}

// crowdedTag returns the offset of a tag with more than limit breaks between words
// outside quotes, or 0: a tag of a million attributes must not reach the XML reader,
// which would hold them all.
func crowdedTag(data []byte, limit int) int {
	limit *= 4 // a name, an equals sign and two quotes
	var quote byte
	start, breaks, inTag := 0, 0, false
	for i := 0; i < len(data); i++ {
		b := data[i]
		switch {
		case !inTag:
			next := bytes.IndexByte(data[i:], '<')
			if next < 0 {
				return 0
			}
			i += next
			if end := skipMarkup(data[i:]); end > 0 {
				i += end - 1
				continue
			}
			start, breaks, inTag = i, 0, true
		case quote != 0:
			if b == quote {
				quote = 0
			}
		case b == '"' || b == '\'':
			quote = b
			breaks++
		case b == '>':
			inTag = false
		case b <= ' ' || b == '=':
			breaks++
		}
		if breaks > limit {
			return start + 1
		}
	}
	return 0
}

// skipMarkup returns the length of the comment, CDATA section or instruction that
// data begins with, or 0.
func skipMarkup(data []byte) int {
	for _, m := range [][2]string{{"<!--", "-->"}, {"<![CDATA[", "]]>"}, {"<?", "?>"}, {"<!", ">"}} {
		if !bytes.HasPrefix(data, []byte(m[0])) {
			continue
		}
		end := bytes.Index(data, []byte(m[1]))
		if end < 0 {
			return len(data)
		}
		return end + len(m[1])
	}
	return 0
}
