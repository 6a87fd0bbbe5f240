package source

var cutting = []Source{
	{"esicup-rect", OpenData, "rectangular cutting instances gcut and cgcut with companions in the ESICUP data sets (CC0-1.0): Beasley 1985; Christofides, Whitlock 1977; Wang 1983; Oliveira, Ferreira 1990; Fayard, Hifi, Zissimopoulos 1998", "optimum values of gcut by exact dynamic programming of Cintra, Wakabayashi and others; those of the limited ones proven apart from this program by best-first search"},
	{"gilmore-gomory-1966", Paper, "Gilmore, Gomory, The theory and computation of knapsack functions, Operations Research 14 (1966) 1045-1074", "recalled, not opened"},
	{"herz-1972", Paper, "Herz, Recursive computational procedure for two-dimensional stock cutting, IBM Journal of Research and Development 16 (1972) 462-469", "sums of sides as cut positions; recalled, not opened"},
	{"scheithauer-terno-1996", Paper, "Scheithauer, Terno, The G4-heuristic for the pallet loading problem, Journal of the Operational Research Society 47 (1996) 511-522", "reduced raster points; recalled, not opened"},
	{"russo-2014", Paper, "Russo, Sforza, Sterle, An exact dynamic programming algorithm for large-scale unconstrained two-dimensional guillotine cutting problems, Computers and Operations Research 50 (2014) 97-114", "blocks without a name; recalled, not opened"},
	{"viswanathan-bagchi-1993", Paper, "Viswanathan, Bagchi, Best-first search methods for constrained two-dimensional cutting stock problems, Operations Research 41 (1993) 768-776", "recalled, not opened"},
	{"hifi-1997", Paper, "Hifi, An improvement of Viswanathan and Bagchi's exact algorithm for constrained two-dimensional cutting stock, Computers and Operations Research 24 (1997) 727-736", "recalled, not opened"},
	{"fekete-schepers-2001", Paper, "Fekete, Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91 (2001) 11-31", "dual feasible functions; recalled, each checked by a property test"},
	{"fleszar-2013", Paper, "Fleszar, Three insertion heuristics and a justification improvement heuristic for two-dimensional bin packing with guillotine cuts, Computers and Operations Research 40 (2013) 463-474", "insertion at any node of a slicing tree; recalled, not opened"},
	{"gupta-ho-1999", Paper, "Gupta, Ho, A new heuristic algorithm for the one-dimensional bin-packing problem, Production Planning and Control 10 (1999) 598-603", "filling for the least slack; recalled, not opened"},
	{"schrimpf-2000", Paper, "Schrimpf, Schneider, Stamm-Wilbrandt, Dueck, Record breaking optimization results using the ruin and recreate principle, Journal of Computational Physics 159 (2000) 139-171", "recalled, not opened"},
	{"berkey-wang-1987", Memory, "Berkey, Wang, Two-dimensional finite bin-packing algorithms, Journal of the Operational Research Society 38 (1987) 423-429", "the six classes of random instances, from memory"},
	{"martello-vigo-1998", Memory, "Martello, Vigo, Exact solution of the two-dimensional finite bin packing problem, Management Science 44 (1998) 388-399", "the four mixed classes of random instances, from memory"},
	{"splitmix", Paper, "Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014, 453-472", "constants of the finaliser recalled"},
}
