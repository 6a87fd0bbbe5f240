package source

var concrete = []Source{
	{"gfrc-guides", Practice, "ranges for glass-fibre-reinforced concrete as printed alike in trade guides: sand to cement 1:1, w/c 0.30-0.38, polymer solids 5-6 % of cement, fibre 2-3.5 %", "read in excerpts; indicative"},
	{"astm-c1074", Standard, "ASTM C1074, Standard Practice for Estimating Concrete Strength by the Maturity Method, equations 1 and 2", "the standard itself not opened; formulas and examples as quoted in public excerpts"},
	{"aci-211", Standard, "ACI 211.1, absolute volume method; worked example as in US Navy NAVEDTRA 14071, chapter 17", "the Navy manual's example was read"},
	{"astm-c979", Standard, "ASTM C979, Standard Specification for Pigments for Integrally Colored Concrete: at most 10 % of the cement", "read in excerpts"},
}
