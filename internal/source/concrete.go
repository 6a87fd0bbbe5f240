package source

var concrete = []Source{
	{"gfrc-guides", Practice, "ranges for glass-fibre-reinforced concrete as printed alike in trade guides: sand to cement 1:1, w/c 0.30-0.38, polymer solids 5-6 % of cement, fibre 2-3.5 %", "read in excerpts; indicative"},
	{"astm-c1074", Standard, "ASTM C1074, Standard Practice for Estimating Concrete Strength by the Maturity Method, equations 1 and 2", "the standard itself not opened; formulas and examples as quoted in public excerpts"},
	{"aci-211", Standard, "ACI 211.1, absolute volume method; worked example as in US Navy NAVEDTRA 14071, chapter 17", "the Navy manual's example was read"},
	{"astm-c979", Standard, "ASTM C979, Standard Specification for Pigments for Integrally Colored Concrete: at most 10 % of the cement", "read in excerpts"},
	{"uno-1998", Paper, "P. J. Uno (1998) Plastic shrinkage cracking and evaporation formulas, ACI Materials Journal 95, title 95-M34", "formula as quoted in public excerpts; its limits 1.0 kg/m2h, 0.5 for mixes of low bleed"},
	{"magnus", Handbook, "Magnus formula of the vapour pressure over water, coefficients 17.62 and 243.12 C as in the WMO guide to instruments (WMO-No. 8)", "from memory; good to 0.4 C between -45 and 60 C"},
	{"aci-209", Memory, "ACI 209R, gain of strength t/(a + b t), moist cured: type I 4.0 and 0.85, type III 2.3 and 0.92", "from memory; poor below one day"},
	{"en-1992", Standard, "EN 1992-1-1:2004, 3.1.2 (gain of strength, s 0.20, 0.25, 0.38) and B.1 equation B.10 (temperature-adjusted age)", "formulas as quoted in public excerpts; poor below one day"},
	{"astm-d4263", Standard, "ASTM D4263, plastic sheet method: a clear sheet taped down for at least 16 hours", "read in excerpts"},
	{"astm-c403", Standard, "ASTM C403, time of setting by penetration resistance: initial 500 psi, final 4000 psi; with the field rule 70 F 5 h, 50 F 10 h, 30 F 20 h", "read in excerpts"},
}
