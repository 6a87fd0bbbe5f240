package source

var form = []Source{
	{"en-312", Standard, "EN 312, Particleboards, specifications, type P2, with the usual sheet sizes", "read in excerpts"},
}
