package source

var foam = []Source{
	{"astm-c578", Standard, "ASTM C578, Standard Specification for Rigid, Cellular Polystyrene Thermal Insulation: classes, strengths, 74 C limit of long service", "read in excerpts"},
	{"aashto-m230", Standard, "AASHTO M 230, polystyrene foam insulation: thickness tolerance 1.6 mm per 25 mm", "read in excerpts"},
	{"polystyrene-resistance", Practice, "chemical resistance of polystyrene foam as printed alike in makers' tables", "acetone, esters, ketones, ethers, aromatics, chlorinated solvents, petrol, paraffin oil and petroleum jelly attack it; water, alkali, alcohols, silicone oil and soap do not"},
	{"rs274ngc", Standard, "T. Kramer, F. Proctor, E. Messina (2000), The NIST RS274/NGC Interpreter - Version 3, NISTIR 6556; words after ISO 6983 and EIA RS-274-D", "sections 2.1 and 3.2 to 3.5 in quotation, and facts of the reference interpreter: modal groups, order of execution, 0.0002 in or 0.002 mm between the two radii of an arc; the report itself was not opened"},
	{"router-practice", Practice, "common practice of router shops in rigid foam: 60 in/min, passes of a quarter inch", "a starting point for a trial cut"},
}
