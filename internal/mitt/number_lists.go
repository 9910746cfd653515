package mitt

import (
	"cmp"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// where lists the numbers for which is returns true, in the table's order.
func where(is func(*info) bool) []Number {
	var list []Number
	for n := range numberCount {
		if is(&table[n]) {
			list = append(list, n)
		}
	}
	return list
}

// ranked lists the numbers that have a place from 1 on, sorted by it.
func ranked(place func(*info) int) []Number {
	list := where(func(r *info) bool { return place(r) > 0 })
	slices.SortStableFunc(list, func(a, b Number) int { return cmp.Compare(place(&table[a]), place(&table[b])) })
	return list
}

var (
	fixable = where((*info).fixable)
	// fixableByOrder is fixable with single numbers first, then lists.
	fixableByOrder = append(where(func(r *info) bool { return r.pin != nil }), where(func(r *info) bool { return r.pin == nil && r.pinned != nil })...)
	knittable      = where(func(r *info) bool { return r.worked != nil || r.listed != nil })
	ladder         = ranked(func(r *info) int { return r.at.ladder })
	forClass       = ranked(func(r *info) int { return r.at.class })
	inSheet        = ranked(func(r *info) int { return r.at.sheet })
	everyHand      = where(func(r *info) bool { return r.everyHand })
	ofStudent      = where(func(r *info) bool { return r.student })
)

// Fixable lists the numbers that can be fixed, in the order in which the search
// keeps to them.
func Fixable() []Number { return slices.Clone(fixable) }

// Knittable lists the numbers that are recorded of what is knitted.
func Knittable() []Number { return slices.Clone(knittable) }

// Ladder lists the numbers that can be fixed in the order of the page.
func Ladder() []Number { return slices.Clone(ladder) }

// ForClass lists the numbers that a class can fix for all.
func ForClass() []Number { return slices.Clone(forClass) }

// InSheet lists the numbers that can be fixed in the order of a sheet.
func InSheet() []Number { return slices.Clone(inSheet) }

// ForEveryHand lists the numbers whose value makes sense for hands of any size;
// all others belong to one hand.
func ForEveryHand() []Number { return slices.Clone(everyHand) }

// OfStudent lists the numbers that one student of a class may fix otherwise.
func OfStudent() []Number { return slices.Clone(ofStudent) }

// RoundsOf returns the number that counts the rounds of a section.
func RoundsOf(part stitch.Part) (Number, bool) {
	if part == stitch.BelowThumb || part == stitch.Opening {
		part = stitch.Gusset
	}
	i := slices.IndexFunc(fixable, func(n Number) bool { return table[n].rounds == part })
	if i < 0 || part == "" {
		return 0, false
	}
	return fixable[i], true
}

// NumberOf returns the number with a key, if it can be fixed.
func NumberOf(key string) (Number, bool) {
	for _, n := range fixable {
		if table[n].key == key {
			return n, true
		}
	}
	return 0, false
}

// PathPins is the field of a sheet that holds the fixed numbers.
const PathPins = "pins"

// NumberAt returns the number with a path in a sheet, if it can be fixed.
func NumberAt(path string) (Number, bool) {
	key, below := strings.CutPrefix(path, PathPins+".")
	if !below {
		return 0, false
	}
	return NumberOf(key)
}
