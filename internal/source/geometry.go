package source

var geometry = []Source{
	{"lorensen-cline", Paper, "Lorensen, Cline, Marching cubes: a high resolution 3D surface construction algorithm, Computer Graphics 21 (1987) 4, 163-169", "the plane case; the ambiguous faces it leaves open are settled by the mean of the four corners"},
	{"maunga-whau", OpenData, "Maunga Whau (Auckland) elevation grid, 87 x 61 nodes of 10 m, digitised by R. Ihaka; in the R data sets as volcano and in the npm package vega-datasets 3.2.1", "areas and volumes above ten levels by three triangulations, contour areas by d3-contour 4.0.3, stack volume by manifold-3d 3.5.4, all computed apart from this program"},
}
