// Package rs274 reads cutting programs in RS-274: text into lines of words, words into
// checked modal state, state into moves in millimetres with the line each came from.
//
// It is a reader and nothing else: it shares no code with whatever writes programs,
// so that what it finds in a file is what a controller would find there.
//
// What is read: straight moves, arcs in centre and radius format in all three planes,
// helices, both distance modes, both units, both feed modes, dwells, spindle, coolant
// and stops. What moves the origin, measures, compensates or drills in cycles depends on
// tables in the machine; such words are findings with their line, and nothing is
// guessed of what they do. So are parameters and expressions.
//
// Facts of the language: [rs274ngc] sections 2.1 and 3.2 to 3.5 and the reference
// interpreter: modal groups, words of a line, order of execution, arcs.
package rs274
