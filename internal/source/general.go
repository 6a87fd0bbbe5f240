package source

var general = []Source{
	{"nist-sp811", Standard, "NIST Special Publication 811 (2008), Guide for the Use of the International System of Units, appendix B.8", "conversion factors; those used here are exact by definition"},
	{"practice", Practice, "common practice of the trade, no source", ""},
	{"memory", Memory, "a published value recalled, not looked up again", "treat as indicative"},
	{"chosen", Chosen, "a judgement of this program; a default the maker can change", ""},
	{"marquardt", Paper, "D. W. Marquardt (1963) An algorithm for least-squares estimation of nonlinear parameters, J. SIAM 11, 431-441", ""},
	{"analytic", Analytic, "closed form derived from first principles beside the check", ""},
}
