package source

var geometry = []Source{
	{"lorensen-cline", Paper, "Lorensen, Cline, Marching cubes: a high resolution 3D surface construction algorithm, Computer Graphics 21 (1987) 4, 163-169", "the plane case; the ambiguous faces it leaves open are settled by the mean of the four corners"},
	{"maunga-whau", OpenData, "Maunga Whau (Auckland) elevation grid, 87 x 61 nodes of 10 m, digitised by R. Ihaka; in the R data sets as volcano and in the npm package vega-datasets 3.2.1", "areas and volumes above ten levels by three triangulations, contour areas by d3-contour 4.0.3, stack volume by manifold-3d 3.5.4, all computed apart from this program"},
	{"w3c-svg2", Standard, "W3C, Scalable Vector Graphics (SVG) 2, Candidate Recommendation, 4 October 2018", "grammar of paths and transforms, coordinate systems, use, fill rules, error handling; section numbers recalled"},
	{"w3c-svg11", Standard, "W3C, Scalable Vector Graphics (SVG) 1.1 (Second Edition), Recommendation, 16 August 2011", "grammar of transform lists"},
	{"w3c-css-syntax", Standard, "W3C, CSS Syntax Module Level 3; Selectors Level 3; CSS Cascading and Inheritance Level 3", "simple selectors, specificity and order only"},
	{"w3c-css-values", Standard, "W3C, CSS Values and Units Module Level 3, section 6.2", "absolute lengths: 1in = 2.54cm = 25.4mm = 72pt = 6pc = 96px, 1Q = 0.25mm"},
	{"resvg-tests", OpenData, "test files of the open renderer at github.com/linebender/resvg (commit 08c79a3148df, Apache-2.0 OR MIT), resolved with its own tree dump", "its arcs are Bezier curves, +0.027 % in area of a circle; it does not know the unit Q"},
	{"w3c-png", Standard, "W3C, Portable Network Graphics (PNG) Specification (Third Edition)", "read with the standard library's decoder"},
	{"itu-bt601", Standard, "ITU-R BT.601-7, Studio encoding parameters of digital television, section 2.5.1", "weights of red, green and blue in luminance"},
}
