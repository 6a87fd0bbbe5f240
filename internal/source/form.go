package source

var form = []Source{
	{"en-312", Standard, "EN 312, Particleboards, specifications, type P2, with the usual sheet sizes", "read in excerpts"},
	{"en-622-5", Standard, "EN 622-5, Fibreboards, requirements for dry process boards (MDF)", "read in excerpts"},
	{"plate-series", Analytic, "Bending of thin rectangular plates by exact series, computed apart from this program; within 0.6 % of Timoshenko, Woinowsky-Krieger, Theory of Plates and Shells", "nu 0.3"},
	{"roark", Handbook, "Young, Budynas, Roark's Formulas for Stress and Strain, table 11.4 case 1a", "some entries are up to 0.9 % off the exact series"},
	{"nds", Standard, "National Design Specification for Wood Construction, chapter 12: withdrawal of wood screws, W = 2850 G^2 D lb per inch of thread in side grain", "2850 G^2 D is the allowable value; edges of boards hold less"},
	{"wood-handbook", Handbook, "Forest Products Laboratory, Wood Handbook, fastenings: ultimate withdrawal of wood screws, 15700 G^2 D lb per inch", ""},
}
