// Package calendar puts tasks with waits and shop hours in order of time. It knows
// tasks, not concrete or resin.
package calendar

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Input is the tasks and when somebody is there.
type Input struct {
	Start string    // date of day 1, YYYY-MM-DD, or ""
	Hours [7][]Span // Monday first
	Tasks []Task
}

// A Span is a stretch of a day, hours after midnight.
type Span struct{ From, To units.Duration }

// A Task is a piece of work or of waiting.
type Task struct {
	ID       string
	Title    string
	Room     string         // which stage asked for it: form, knockout, concrete ...
	Work     units.Duration // somebody's hands, within shop hours
	Wait     units.Duration // runs day and night after the work
	WaitFor  string         // what the wait is for, in words
	Latest   units.Duration // 0, or the next task must start within this time after the work ends
	After    []string       // ids
	Cautions []string
}

// Result is the steps in order.
type Result struct {
	Steps   []Step         `json:"steps"`
	Hands   units.Duration `json:"hands_h"`
	Elapsed units.Duration `json:"elapsed_h"`
	Finish  string         `json:"finish"` // "Thu 2027-03-18 15:30", or "day 17 15:30"
}

// A Step is a task with its time.
type Step struct {
	Number   int            `json:"number"`
	ID       string         `json:"id"`
	Title    string         `json:"title"`
	Room     string         `json:"room"`
	Work     units.Duration `json:"work_h"`
	Wait     units.Duration `json:"wait_h"`
	WaitFor  string         `json:"wait_for"`
	StartH   units.Duration `json:"start_h"` // after midnight of day 1
	EndH     units.Duration `json:"end_h"`   // of the work
	Start    string         `json:"start"`
	End      string         `json:"end"`
	Cautions []string       `json:"cautions"`
}

// Compute is pending.
func Compute(in Input) (Result, []finding.Finding) { panic("calendar pending") }
