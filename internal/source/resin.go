package source

var resin = []Source{
	{"resin-presets", Chosen, "generic cure presets of this program, fitted to the behaviour of classes of casting resin and to no product", "E 55 kJ/mol, k1/k2 0.2, m 1, n 2; pot life and gel of 100 g at 25 C, film at 22 C"},
	{"iec-61966-2-1", Memory, "IEC 61966-2-1, default RGB colour space: its transfer curve", "from memory"},
	{"kamal-sourour", Paper, "M. R. Kamal, S. Sourour (1973) Kinetics and thermal characterization of thermoset cure, Polym. Eng. Sci. 13, 59-64", "form of the rate"},
	{"dibenedetto", Paper, "A. T. DiBenedetto (1987) Prediction of the glass transition temperature of polymers, J. Polym. Sci. B 25, 1949-1969", "Tg against cure"},
	{"chern-poehlein", Paper, "C.-S. Chern, G. W. Poehlein (1987) A kinetic model for curing reactions of epoxides with amines, Polym. Eng. Sci. 27, 788-795", "slowing near vitrification; a logistic form of it is used"},
	{"flory-stockmayer", Memory, "W. H. Stockmayer (1944), P. J. Flory: gel point of step polymers, 1/sqrt((f-1)(g-1))", "from memory"},
	{"meyer-rkl2", Paper, "C. D. Meyer, D. S. Balsara, T. D. Aslam (2014) A stabilized Runge-Kutta-Legendre method for explicit super-time-stepping of parabolic and mixed equations, J. Comput. Phys. 257, 594-626", "coefficients from memory, held by its order of accuracy in a test"},
	{"gresho-sani", Memory, "P. M. Gresho, R. L. Lee, R. L. Sani (1980) On the time-dependent solution of the incompressible Navier-Stokes equations in two and three dimensions: steps of the trapezoidal rule by its local error, dt^3/12 of the third derivative", "from memory"},
	{"mcadams", Memory, "W. H. McAdams, Heat Transmission: horizontal plates, as printed in F. P. Incropera, D. P. DeWitt", "from memory"},
	{"churchill-chu", Paper, "S. W. Churchill, H. H. S. Chu (1975) Correlating equations for laminar and turbulent free convection from a vertical plate, Int. J. Heat Mass Transfer 18, 1323-1329", ""},
	{"epoxy-heat", Memory, "heat of reaction of epoxides with amines, 98 to 108 kJ an equivalent, as abstracts of calorimetric papers print it", "from memory; the table is worked from 100 kJ"},
	{"epoxy-properties", Handbook, "density and conductivity of unfilled epoxies as printed alike in handbooks", "1080 to 1130 kg/m3; read in excerpts"},
	{"incropera", Memory, "F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, 6th edition: Table 5.1 and the example of the pipe wall", "values from memory, and worked again from the series"},
	{"carslaw-jaeger", Memory, "H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd edition: slabs, half spaces, contact, steady sources", "closed forms from memory, evaluated apart"},
	{"frank-kamenetskii", Memory, "D. A. Frank-Kamenetskii, Diffusion and Heat Transfer in Chemical Kinetics: critical parameters of thermal explosion", "values evaluated apart from the equation, films at the faces included"},
	{"bogetti-gillespie", Memory, "T. A. Bogetti, J. W. Gillespie (1991) Two-dimensional cure simulation of thick thermosetting composites, J. Compos. Mater. 25, 239-273: glass polyester", "kinetics from memory; results by finite volumes apart, converged"},
	{"cure-by-lines", Analytic, "one-dimensional cure by the method of lines, each cell's balance by an implicit integrator of SciPy 1.10.1 to 1e-8: bench/cure_slabs.py", "evaluated apart from this program, on grids of n and 2n cells"},
	{"lee-loos-springer", Memory, "W. I. Lee, A. C. Loos, G. S. Springer (1982) Heat of reaction, degree of cure, and viscosity of Hercules 3501-6 resin, J. Compos. Mater. 16, 510-520", "kinetics from memory; results by finite volumes apart, converged"},
}
