// Package calendar answers: what is done at what hour, in what order, and is anybody
// there when a coat must be followed up?
//
// # Model
//
// One pair of hands, or one crew that works together. A task is work, then a
// wait. Work happens within shop hours, one task at a time; a wait runs day and
// night. With s the start, e the end of the work, w the wait and l the latest, all
// hours after midnight of day 1 in the shop's own wall time:
//
//	s(B) >= e(A) + w(A)       for every A that B comes after
//	s(B) <= e(A) + l(A)       where A has a latest
//
// Work stops at closing time and goes on at the next opening, unless the task is
// unbroken or has a latest: such work is placed where it fits in one stretch. If
// no stretch is long enough it works through the breaks of one day, and if even
// that is too short it runs past closing time and says so.
//
// The hands always take the task that can start first, ties in the order given.
// A task with a latest starts only when what follows can start in time: its start
// is moved on, a quarter of an hour at a time, up to two weeks, until every window
// of the chain falls in shop hours. Other work may fill a wait only if it is over
// before the window closes. What cannot be kept is a finding with the time at
// which somebody would have to be there.
//
// A latest binds the next tasks only: those after A that are not also after
// another task after A.
//
// Times are whole minutes: work and waits are rounded up, a latest down. Without
// a start date day 1 is a Monday. Wall time is plain: a day has 24 hours also when
// the clocks change.
//
// # Left out
//
// Two crews at once, holidays, lead times of what is bought, overtime.
//
// # Sources
//
// Plain arithmetic; the durations come from the rooms that ask for the tasks.
package calendar
