package source

var nesting = []Source{
	{"gardeyn-2025", Paper, "J. Gardeyn, G. Vanden Berghe, T. Wauters (2025), An open-source heuristic to reboot 2D nesting research, arXiv:2509.13329v1", "tables 2 and 3: expected and best densities of strip packing after 20 minutes, and those of earlier methods"},
	{"esicup-irregular", OpenData, "irregular strip packing instances of the ESICUP data sets (CC0-1.0): albano, dagli, fu, jakobs1, marques, shapes0, trousers", "polygons, quantities, turns allowed, strip height"},
}
