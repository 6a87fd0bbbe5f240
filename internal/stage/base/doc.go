// Package base answers: what stands under the shell and carries it?
//
// # Model
//
// An inset carcass fits the shell's inside with a clearance all round. Its sides run
// past its ends; ends, dividers, top and bottom lie between, grooves added to their
// sizes where boards are grooved. It is higher than the hollow, so that the shell's
// foot hangs clear of the floor.
//
// Cross supports of square tube lie under the basin's floor, bolted down through their
// lower faces; an access hole above each bolt lets its head and the socket in. At the
// holes the section is taken without both holes, its middle shifted to the side of the
// smaller one.
//
// Bars are cut with kerf, both ends of a bar cleaned first; no piece is joined.
//
// # Left out
//
// Tipping and stresses: the hull of the feet and the holes are handed on. Corner
// roundings of the tube in the weakening.
//
// # Sources
//
// [analytic]; sockets and holes [memory]; limits are chosen.
package base
