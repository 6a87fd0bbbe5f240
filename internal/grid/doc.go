// Package grid holds height fields on a regular grid: their contours, and the areas
// and volumes above a level.
//
// A Field is samples at the nodes of a grid, y up. Between the nodes of one cell it
// is measured as four plane triangles about the mean of the cell, which is
// continuous from cell to cell and has the volume of the bilinear surface:
//
//	z(centre) = (z00 + z10 + z01 + z11)/4
//
// Contours are those of marching squares: straight between the crossings of the
// cell's sides, which are where the height, linear along a side, meets the level.
// Where a cell has two opposite corners above the level and two below, the mean
// decides whether the high corners join; so no contour crosses itself or another,
// and the answer does not depend on how the grid is turned.
//
// A missing sample (not a number) is below every level.
//
// Source: [lorensen-cline] for the method, carried to the plane.
package grid
