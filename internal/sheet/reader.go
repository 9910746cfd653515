package sheet

import (
	"strconv"
	"strings"
	"time"

	"thenar/internal/fault"
	"thenar/internal/units"
)

// reader turns texts of a sheet into values, section by section, and collects
// what is wrong with them.
type reader struct {
	sheet  Sheet
	unit   units.Unit
	faults fault.Fields
}

func (s Sheet) reader() *reader { return &reader{sheet: s, unit: s.Unit()} }

// read reads one section of a sheet, whatever the rest of it is like.
func read[T any](s Sheet, section func(*reader) T) (T, error) {
	r := s.reader()
	v := section(r)
	return v, r.faults.Err()
}

func (r *reader) choice(path string, n *node) string {
	text := r.sheet.Given(path)
	if text == "" {
		return ""
	}
	for _, word := range n.words {
		if text == word {
			return text
		}
	}
	r.faults.Add(path, "is %q; write one of: %s", clip(text), strings.Join(n.words, ", "))
	return ""
}

func (r *reader) length(path string) units.Length {
	text := r.sheet.Given(path)
	if text == "" {
		return 0
	}
	l, err := units.Parse(text, r.unit)
	digits := strings.TrimLeft(text, "-−")
	if _, number := decimal(digits); number && digits != text {
		r.faults.Add(path, "is %s, below zero; write a length above 0", clip(text))
	} else if err != nil {
		r.faults.Add(path, "%s", err)
	}
	return l
}

// required reads a length that must be given.
func (r *reader) required(path, why string) units.Length {
	if r.sheet.Given(path) == "" {
		r.faults.Add(path, "is missing; %s", why)
		return 0
	}
	return r.length(path)
}

// amount reads a decimal from 0 to high; nil if it was not given.
func (r *reader) amount(path string, high float64) *float64 {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	n, ok := decimal(text)
	if !ok || n > high {
		r.faults.Add(path, "is %s; write a number from 0 to %g", clip(text), high)
		return nil
	}
	return &n
}

// date checks that a day is in the calendar.
func (r *reader) date(path string) {
	text := r.sheet.Given(path)
	if text == "" {
		return
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		r.faults.Add(path, "is %q; write a day as year-month-day, such as 2025-03-09", clip(text))
	}
}

// number reads a number above 0 and at most 10 000. If why is not empty, the
// number must be given, and why is the advice if it is missing.
func (r *reader) number(path, why string) float64 {
	text := r.sheet.Given(path)
	if text == "" {
		if why != "" {
			r.faults.Add(path, "is missing; %s", why)
		}
		return 0
	}
	n, ok := count(text)
	if !ok {
		r.faults.Add(path, "is %q; write digits such as 24, 24.5 or 24 1/2", clip(text))
		return 0
	}
	if n == 0 || n > 10_000 {
		r.faults.Add(path, "is %s; write a number above 0 and at most 10000", clip(text))
	}
	return n
}

func (r *reader) numberOr(path string, byDefault float64) float64 {
	if r.sheet.Given(path) == "" {
		return byDefault
	}
	return r.number(path, "")
}

// count reads a decimal, or a number with a fraction such as 24 1/2, since half
// stitches are counted. Thousandths are the finest fraction.
func count(text string) (float64, bool) {
	if n, ok := decimal(text); ok {
		return n, true
	}
	l, err := units.Parse(text, units.MM)
	return l.MM(), err == nil
}

// Count reads a counted number as a sheet takes it.
func Count(text string) (float64, bool) { return count(strings.TrimSpace(text)) }

// decimal reads digits with at most one "." or ","; it takes no sign, exponent or
// NaN.
func decimal(text string) (float64, bool) {
	plain := strings.Replace(text, ",", ".", 1)
	if len(plain) > 20 || strings.Trim(plain, "0123456789.") != "" {
		return 0, false
	}
	n, err := strconv.ParseFloat(plain, 64)
	return n, err == nil
}

// ease reads fabric over body minus one, or the same as a percentage, perhaps
// with a sign. The plan checks its range.
func (r *reader) ease(path string) *float64 {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	n, ok := easeOf(text)
	if !ok {
		r.faults.Add(path, "is %q; write how much larger the fabric is, such as -5\u00a0%% or -0.05", clip(text))
		return nil
	}
	return &n
}

// share reads a decimal or a percentage, perhaps with a sign.
func (r *reader) share(path string) *float64 {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	n, ok := easeOf(text)
	if !ok {
		r.faults.Add(path, "is %q; write a share such as 0.15, or the same as 15\u00a0%%", clip(text))
		return nil
	}
	return &n
}

func easeOf(text string) (float64, bool) {
	rest, percent := strings.CutSuffix(strings.Replace(text, "−", "-", 1), "%")
	rest = strings.TrimSpace(rest)
	rest, negative := strings.CutPrefix(rest, "-")
	if !negative {
		rest = strings.TrimPrefix(rest, "+")
	}
	n, ok := decimal(strings.TrimSpace(rest))
	if percent {
		n /= 100
	}
	if negative {
		n = -n
	}
	return n, ok
}

func (r *reader) flag(path string, byDefault bool) bool {
	switch text := r.sheet.Given(path); text {
	case "":
		return byDefault
	case "true":
		return true
	case "false":
		return false
	default:
		r.faults.Add(path, "is %q; write true or false", clip(text))
		return byDefault
	}
}

func (r *reader) wholeOr(path string, low, high, byDefault int) int {
	text := r.sheet.Given(path)
	if text == "" {
		return byDefault
	}
	n, ok := wholeOf(text)
	if !ok || n < low || n > high {
		r.faults.Add(path, "is %s; write a whole number from %d to %d", clip(text), low, high)
		return byDefault
	}
	return n
}

// wholeOf reads a whole number in digits, perhaps with a minus sign; it refuses
// 5.0.
func wholeOf(text string) (int, bool) {
	digits := strings.TrimPrefix(text, "-")
	if digits == "" || len(digits) > 9 || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	return n, err == nil
}
