// Package heightmap reads a basin drawn as heights, a grey picture or a plain text
// grid, and turns it into steps.
//
// # Files
//
// A PNG picture of 8 or 16 bit: white is the show face, black the stated depth, and
// grey lies in between in proportion. Colours are read as grey, and a finding says
// so. A text grid: one row a line, the far row first, values parted by white space,
// commas or semicolons; # starts a comment. Before the rows there may be lines of
// key and value:
//
//	cell: 4 mm        distance between nodes (alone: mm)
//	unit: in          of the values: mm (unless said), cm, m, in, ft
//	values: depth     depth below the show face (unless said), or height
//	nodata: -9999     stands for a missing value, which lies in the face
//
// The keys of the open ASCII grid exchange form (ncols, nrows, cellsize,
// NODATA_value) are read as well. Values are samples at the nodes: c columns span
// (c-1) cells.
//
// # Limits
//
// 64 MiB, 4000 nodes a side, 16 million nodes; a picture's size is checked before
// it is unpacked. What is wrong is an *Error with file, line and column.
//
// # Steps
//
// Step k from depth f to f + t is cut where the map is deeper than a level in it:
//
//	level = f + (1/2 + s) t
//
// with one s for all steps, chosen so that the stack of steps keeps the volume under
// the bilinear surface to 0.5 %, after everything else: outlines are rounded to the
// cutter radius by closing and opening, spots and islands smaller than the speck
// area are dropped, and each step is cut to the one above it. Rounding changes only
// what a cutter of that radius cannot get into or would cut away. Where the map runs
// out through its frame, it is carried on beyond it before rounding, so that a mouth
// keeps its corners.
//
// Left out: overhangs, which no height map holds.
//
// Sources: [w3c-png] for the picture; contours in package grid.
package heightmap
