package source

var foam = []Source{
	{"astm-c578", Standard, "ASTM C578, Standard Specification for Rigid, Cellular Polystyrene Thermal Insulation: classes, strengths, 74 C limit of long service", "read in excerpts"},
	{"aashto-m230", Standard, "AASHTO M 230, polystyrene foam insulation: thickness tolerance 1.6 mm per 25 mm", "read in excerpts"},
	{"polystyrene-resistance", Practice, "chemical resistance of polystyrene foam as printed alike in makers' tables", "acetone, esters, ketones, ethers, aromatics, chlorinated solvents, petrol, paraffin oil and petroleum jelly attack it; water, alkali, alcohols, silicone oil and soap do not"},
}
