package job

import "pourwright/internal/typed"

// ShopText is the calendar as typed.
type ShopText struct {
	// First day, YYYY-MM-DD; without it the plan counts days.
	Start typed.Date `yaml:"start,omitempty"`
	// Opening hours. Default Monday to Friday 8:00-17:00.
	Hours *HoursText `yaml:"hours,omitempty"`
	// Days on which nobody is there: 2027-03-08, or 2027-03-08 to 2027-03-12.
	Closed typed.List `yaml:"closed,omitempty"`
	// Who works here. Default one person all hours, and helpers who come for the
	// casting where concrete.people says so.
	People []PersonText `yaml:"people,omitempty"`
}

// PersonText is one who works in the shop, as typed.
type PersonText struct {
	// What they are called on the plan.
	Name typed.Text `yaml:"name"`
	// When they are there. Default the shop's hours.
	Hours *HoursText `yaml:"hours,omitempty"`
	// Days on which they are not: 2027-03-08, or 2027-03-08 to 2027-03-12.
	Away typed.List `yaml:"away,omitempty"`
}

// HoursText is a week as typed: 8:00-17:00, a list of such spans, or closed.
type HoursText struct {
	// Monday.
	Mon typed.List `yaml:"mon,omitempty"`
	// Tuesday.
	Tue typed.List `yaml:"tue,omitempty"`
	// Wednesday.
	Wed typed.List `yaml:"wed,omitempty"`
	// Thursday.
	Thu typed.List `yaml:"thu,omitempty"`
	// Friday.
	Fri typed.List `yaml:"fri,omitempty"`
	// Saturday.
	Sat typed.List `yaml:"sat,omitempty"`
	// Sunday.
	Sun typed.List `yaml:"sun,omitempty"`
}
