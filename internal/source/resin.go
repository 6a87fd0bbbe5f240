package source

var resin = []Source{
	{"resin-presets", Chosen, "generic cure presets of this program, fitted to the behaviour of classes of casting resin and to no product", "E 55 kJ/mol, k1/k2 0.2, m 1, n 2; pot life and gel of 100 g at 25 C, film at 22 C"},
	{"iec-61966-2-1", Memory, "IEC 61966-2-1, default RGB colour space: its transfer curve", "from memory"},
	{"epoxy-properties", Handbook, "density and conductivity of unfilled epoxies as printed alike in handbooks", "1080 to 1130 kg/m3; read in excerpts"},
}
