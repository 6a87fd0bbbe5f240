package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// The rules of a log of temperatures.
var (
	LogUnread = finding.Rule{Code: "document/room-log", Severity: finding.Caution,
		Title: "the log of temperatures can be read", Remedy: "write two columns, time and temperature, such as 0.5, 19.8"}
	LogFahrenheit = finding.Rule{Code: "document/room-log-unit", Severity: finding.Stop,
		Title: "the log is in the unit it says", Remedy: "head the column temp_f where the log is in Fahrenheit, temp_c where it is in Celsius"}
	LogGap = finding.Rule{Code: "document/room-log-gap", Severity: finding.Caution,
		Title: "the log has no gaps", Remedy: "fill the gap from another thermometer, or plan by a constant temperature"}
	LogOrder = finding.Rule{Code: "document/room-log-order", Severity: finding.Caution,
		Title: "the log goes forward in time", Remedy: "sort the log by time and take out double lines"}
)

const longestGap units.Duration = 3 // h between two readings. Chosen: a shop changes in less

const (
	mostLines = 20_000
	likeF     = 45.0 // a mean above this was read in Fahrenheit
)

// reading is one line of a log.
type reading struct {
	at   units.Duration
	temp units.Temperature
	line int
}

// ParseRoomLog reads a log of temperatures: a line a reading, hours or date and time,
// then the temperature, split by comma, semicolon or tab. A head line may name the
// column temp_f or F. Between two readings the mean of both holds. Lines that cannot
// be used are left out, each kind with one finding that says where; a log that cannot
// be trusted as a whole gives no stretches.
func ParseRoomLog(name string, data []byte) ([]Stretch, []finding.Finding) {
	p := &logReader{file: name}
	lines := strings.Split(strings.TrimPrefix(string(data), "\ufeff"), "\n")
	if len(lines) > mostLines {
		p.say(LogUnread, mostLines, "The log %s has more than %d lines; the rest is left out.", name, mostLines)
		lines = lines[:mostLines]
	}
	for i, l := range lines {
		p.read(i+1, strings.TrimSpace(l))
	}
	return p.stretches(), p.found
}

type logReader struct {
	file       string
	fahrenheit bool
	start      time.Time
	readings   []reading
	found      []finding.Finding
}

// say reports each kind of fault once.
func (p *logReader) say(rule finding.Rule, line int, format string, args ...any) *finding.Finding {
	if i := slices.IndexFunc(p.found, func(f finding.Finding) bool { return f.Code == rule.Code }); i >= 0 {
		return &finding.Finding{}
	}
	p.found = append(p.found, rule.At(finding.Where{File: p.file, Line: line, Field: "room.log"}, format, args...))
	return &p.found[len(p.found)-1]
}

func (p *logReader) read(line int, text string) {
	if text == "" || strings.HasPrefix(text, "#") {
		return
	}
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' || r == '\t' })
	if len(fields) < 2 {
		p.say(LogUnread, line, "Line %d of the log %s has no two columns; it is left out.", line, p.file)
		return
	}
	first, second := strings.TrimSpace(fields[0]), strings.TrimSpace(fields[1])
	temp, err := strconv.ParseFloat(strings.TrimRight(second, " °CcFf"), 64)
	if err != nil && len(p.readings) == 0 {
		head := strings.ToLower(second)
		p.fahrenheit = p.fahrenheit || strings.HasSuffix(head, "f") || strings.Contains(head, "fahrenheit")
		return
	}
	at, ok := p.time(first)
	if err != nil || !ok || temp != temp || temp < -1000 || temp > 1000 {
		p.say(LogUnread, line, "Line %d of the log %s, %q, is no time and temperature; it is left out.", line, p.file, text)
		return
	}
	t := units.Temperature(temp)
	if p.fahrenheit || strings.HasSuffix(strings.ToLower(second), "f") {
		t = (t - 32) * 5 / 9
	}
	if n := len(p.readings); n > 0 && at <= p.readings[n-1].at {
		p.say(LogOrder, line, "Line %d of the log %s is not later than the line before it; it is left out.", line, p.file)
		return
	}
	p.readings = append(p.readings, reading{at, t, line})
}

// time reads hours, or a date and time, which count from the first.
func (p *logReader) time(text string) (units.Duration, bool) {
	if h, err := strconv.ParseFloat(text, 64); err == nil && h >= 0 && h < 1e5 {
		return units.Duration(h), p.start.IsZero()
	}
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02 15:04"} {
		t, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		if p.start.IsZero() {
			if len(p.readings) > 0 {
				return 0, false
			}
			p.start = t
		}
		return units.Duration(t.Sub(p.start).Hours()), true
	}
	return 0, false
}

// stretches turns readings into times at one temperature.
func (p *logReader) stretches() []Stretch {
	n := len(p.readings)
	if n < 2 {
		p.say(LogUnread, 1, "The log %s has %s; two at least make a history.", p.file, units.Count(n, "reading", "readings"))
		return nil
	}
	mean, out := 0.0, []Stretch{}
	for i, r := range p.readings {
		mean += float64(r.temp) / float64(n)
		if i == 0 {
			continue
		}
		before := p.readings[i-1]
		gap := r.at - before.at
		if gap > longestGap {
			f := p.say(LogGap, r.line, "The log %s says nothing for %.1f h before line %d; the mean of both ends is taken there.", p.file, gap, r.line)
			f.Got, f.Limit, f.Unit = float64(gap), float64(longestGap), "h"
		}
		out = append(out, Stretch{gap, (before.temp + r.temp) / 2})
	}
	if mean > likeF {
		f := p.say(LogFahrenheit, p.readings[0].line, "The log %s has a mean of %.0f C, which no shop has; it is left out.", p.file, mean)
		f.Got, f.Limit, f.Unit = mean, likeF, "C"
		f.Remedy = fmt.Sprintf("did you log in Fahrenheit, %.0f F = %.0f C? head the column temp_f", mean, (mean-32)*5/9)
		return nil
	}
	return out
}
