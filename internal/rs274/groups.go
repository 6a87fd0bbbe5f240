package rs274

import (
	"math"
	"strconv"
)

// A code is ten times the number of a G or M word: G38.2 is 382.
type code int

func (c code) of(letter byte) string {
	return string(letter) + strconv.FormatFloat(float64(c)/10, 'f', -1, 64)
}

// codeOf returns the code of a word's number, or false where it has none.
func codeOf(v float64) (code, bool) {
	c := math.Round(10 * v)
	return code(c), math.Abs(10*v-c) < 1e-3 && c >= 0
}

// The modal groups, by what they govern. Source: [rs274ngc] section 3.4, table 4.
const (
	nonModal = iota
	motion
	plane
	distance
	feedMode
	unitsOf
	cutterComp
	toolLength
	cannedReturn
	coordinates
	pathControl
	stopping
	toolChange
	spindle
	coolant
	override
)

// gGroups are the G words and their groups. Source: [rs274ngc] section 3.4, table 4.
var gGroups = groups(map[int][]code{
	nonModal:     {40, 100, 280, 300, 530, 920, 921, 922, 923},
	motion:       {0, 10, 20, 30, 382, 800, 810, 820, 830, 840, 850, 860, 870, 880, 890},
	plane:        {170, 180, 190},
	distance:     {900, 910},
	feedMode:     {930, 940},
	unitsOf:      {200, 210},
	cutterComp:   {400, 410, 420},
	toolLength:   {430, 490},
	cannedReturn: {980, 990},
	coordinates:  {540, 550, 560, 570, 580, 590, 591, 592, 593},
	pathControl:  {610, 611, 640},
})

// mGroups are the M words and their groups. Source: [rs274ngc] section 3.4, table 4.
var mGroups = groups(map[int][]code{
	stopping:   {0, 10, 20, 300, 600},
	toolChange: {60},
	spindle:    {30, 40, 50},
	coolant:    {70, 80, 90},
	override:   {480, 490},
})

func groups(in map[int][]code) map[code]int {
	out := map[code]int{}
	for g, cs := range in {
		for _, c := range cs {
			out[c] = g
		}
	}
	return out
}

// follows says of G words that are known and not followed what they do.
var follows = map[code]string{
	100: "sets tables in the machine",
	280: "goes to a place that only the machine knows",
	300: "goes to a place that only the machine knows",
	382: "probes until it touches",
	410: "leaves the cutter's radius to the machine",
	420: "leaves the cutter's radius to the machine",
	430: "takes the tool's length from a table in the machine",
	810: "is a drilling cycle", 820: "is a drilling cycle", 830: "is a drilling cycle",
	840: "is a tapping cycle", 850: "is a boring cycle", 860: "is a boring cycle",
	870: "is a boring cycle", 880: "is a boring cycle", 890: "is a boring cycle",
	920: "moves the origin", 923: "moves the origin",
}

// usesAxes are the non-modal words that take axis words to themselves.
var usesAxes = map[code]bool{100: true, 280: true, 300: true, 920: true}

// letters are those that may begin a word. Source: [rs274ngc] section 3.3, table 3.
const letters = "ABCDFGHIJKLMNPQRSTXYZ"
