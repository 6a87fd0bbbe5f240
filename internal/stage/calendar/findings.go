package calendar

import "pourwright/internal/finding"

var (
	circle = finding.Rule{
		Code: "calendar/circle", Severity: finding.Stop,
		Title:  "no task waits for itself",
		Remedy: "Take one of these links out.",
	}
	closed = finding.Rule{
		Code: "calendar/closed", Severity: finding.Caution,
		Title:  "somebody is there",
		Remedy: "Write the shop's hours for at least one day of the week.",
	}
	badHours = finding.Rule{
		Code: "calendar/hours", Severity: finding.Caution,
		Title:  "shop hours are stretches of a day",
		Remedy: "Write hours as from and to within one day, such as 8:00 to 17:00.",
	}
	badStart = finding.Rule{
		Code: "calendar/start", Severity: finding.Caution,
		Title:  "the start is a date",
		Remedy: "Write the date of the first day as year-month-day, such as 2027-03-01, or leave it out.",
	}
	badTask = finding.Rule{
		Code: "calendar/task", Severity: finding.Caution,
		Title:  "tasks have ids and durations of their own",
		Remedy: "Correct the task.",
	}
	badPeople = finding.Rule{
		Code: "calendar/people", Severity: finding.Caution,
		Title:  "the shop is a few people",
		Remedy: "List those who work on this piece.",
	}
	badDay = finding.Rule{
		Code: "calendar/day-off", Severity: finding.Caution,
		Title:  "days off are dates",
		Remedy: "Write days off as year-month-day, such as 2027-03-08, and shop.start with them.",
	}
	hands = finding.Rule{
		Code: "calendar/hands", Severity: finding.Caution,
		Title:  "as many people are there as a task asks for",
		Remedy: "Ask more people to be there, or write them under shop.people.",
	}
	moved = finding.Rule{
		Code: "calendar/start-moved", Severity: finding.Note,
		Title:  "a timed task starts when its follow-up falls in shop hours",
		Remedy: "Keep to the start, or have somebody there when the window opens.",
	}
	window = finding.Rule{
		Code: "calendar/window-missed", Severity: finding.Caution,
		Title:  "somebody is there when a window opens",
		Remedy: "Have somebody there in the window, or change the shop's hours for that day.",
	}
	through = finding.Rule{
		Code: "calendar/no-break", Severity: finding.Note,
		Title:  "unbroken work fits between two breaks",
		Remedy: "Work through, or have somebody take over for the break.",
	}
	overtime = finding.Rule{
		Code: "calendar/past-closing", Severity: finding.Caution,
		Title:  "unbroken work fits in a shop day",
		Remedy: "Stay on that day, call in help, or split it into smaller pours.",
	}
)

// Rules lists the findings of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{circle, closed, badHours, badStart, badTask, badPeople, badDay, hands, moved, window, through, overtime}
}
