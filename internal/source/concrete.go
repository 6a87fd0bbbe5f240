package source

var concrete = []Source{
	{"gfrc-guides", Practice, "ranges for glass-fibre-reinforced concrete as printed alike in trade guides: sand to cement 1:1, w/c 0.30-0.38, polymer solids 5-6 % of cement, fibre 2-3.5 %", "read in excerpts; indicative"},
}
