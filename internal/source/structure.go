package source

var structure = []Source{
	{"hse-l23", Handbook, "Health and Safety Executive, L23 Manual handling, guidance on the Manual Handling Operations Regulations 1992: team handling", "two people two thirds, three people one half of the sum of what each lifts alone; nothing is printed for larger teams"},
	{"niosh-94-110", Paper, "Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) publication 94-110, 1994", "load constant 23 kg; every other multiplier lowers it"},
	{"en-10219-2", Standard, "EN 10219-2, Cold formed welded structural hollow sections: tolerances, dimensions and sectional properties, annex B and the table of square sections", "corner radii 2 T outside and T inside for walls up to 6 mm; density 7850 kg/m3"},
}
