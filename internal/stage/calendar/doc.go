// Package calendar answers: who does what at what hour, how early can all be done, and
// is anybody there when a coat must be followed up?
//
// # Model
//
// People have hours, days off, and two hands each. A task is work by so many of them,
// then a wait. Work happens when all who do it are there, and nobody is in two places; a
// wait runs day and night and needs nobody. With s the start, e the end of the work, w
// the wait and l the latest, all hours after midnight of day 1 in the shop's own wall
// time:
//
//	s(B) >= e(A) + w(A)       for every A that B comes after
//	s(B) <= e(A) + l(A)       for the next tasks after A, where A has a latest
//	s(B) >= e(A) + w, s(B) <= e(A) + l      for a link with times of its own
//
// The next tasks after A are those that are not also after another task after A.
//
// Work stops when somebody leaves and goes on when all are back, unless the task is
// unbroken or a window counts from its end: such work is placed where it fits in one
// stretch. If no stretch is long enough it works through the breaks of one day, and if
// even that is too short it runs past closing and says so.
//
// # Search
//
// Every rule has the form "this start is no earlier than a function of that one", and
// the functions never fall. For one choice of people, and of who goes first where two
// tasks want the same hands, there is therefore a least set of times, found by moving
// starts on until all rules hold. Branch and bound over the choices finds the earliest
// finish; the result says whether that was proven, or the search stopped at its limit
// with the best so far. Work that may pause is then moved to a later start where it
// needs fewer days so and nothing else has to move.
//
// A window that no start can keep in hours is looked at with its chain alone. One with
// another way out (sand, then pour) is given up; for others the days of those who follow
// up are begun and ended by as few quarters of an hour as will do, for a day off from
// noon, so that a coat is never planned too late: somebody has to come. The finding names
// the window, the hours, the time to be there, and a start of the chain from which it
// would fall in hours.
//
// Times are whole minutes: work and waits are rounded up, a latest down. Without a start
// date day 1 is a Monday. Wall time is plain: a day has 24 hours also when the clocks
// change.
//
// # Left out
//
// Work handed over from one person to another while it goes on, other work in the pauses
// of a task, lead times of what is bought.
//
// # Sources
//
// Plain arithmetic; the durations come from the rooms that ask for the tasks. Least times
// under "no earlier than" rules are the longest paths of a network; see any textbook of
// project scheduling. Held against every choice there is on small shops, in the tests.
package calendar
