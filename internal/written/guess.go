package written

import (
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// vocabulary is the words that a slip of spelling is compared with.
var vocabulary = func() (list []string) {
	for name := range signs {
		list = append(list, name)
	}
	for word := range roundWords {
		list = append(list, word)
	}
	list = append(list, "repeat", "rep", "marker", "markers", "knit", "purl", "slip", "cast", "bind", "pm", "sm", "holder", "stitches", "sts", "around", "together", "tog", "k1", "p1", "k2", "p2")
	slices.Sort(list)
	return slices.Compact(list)
}()

// ordinary are words of everyday language that are like a word of the trade: nothing else was
// meant where they stand.
var ordinary = func() map[string]bool {
	all := map[string]bool{}
	for _, word := range strings.Fields(`add and any ask back band bands bat bend bird bits bold bolt bond bound build bunch came
		can card care case cases cat class cost count counts cross cut do does done don't down draw
		ease each end ended ends far few fine find finds first fit flat fold for found from full
		ground grow grows had hand has have held help her here hold holds hole holes hound how into
		its just kept kind kinds knits knot know known knows land lap last late lay left less let
		like line list lists long loop low made make maker makes male many map mark marked market marks
		mast may meet mid mind more most mound much must near new next nip nor not now odd
		off old one only open or order other our out over own pair paint part parts pass past
		paste piece pin pink place plain plan play pole pool port post pound press pull pulls purls push
		put puts raw reach read red rest rests rid rip road rod roll room root rope rose round-up
		rounded route rub ruin run runs rust said same sand say see seem send set sets sew ship
		shop short show side sip sit sits skip skirt sky slack slid slit slot slow small snip so
		soft some sound spin split spot stay step steps still stop stops strap strip such suit sum swap
		tag take tall tap ten test than that the them then there these they this tie tied tight
		tip to toe toes told too took top total tuck turns twist two under unit up use used
		wait was waste way weave well wet what when where will wind wish with word words work works
		worn would wound wrap yard yarn yarns yes behind binds casts halt harder header makers manner master passed
		passes pure purled purple repeated report repeats stretches swatches switched yet you your stitch chart charts cards bind-off
		cast-off gap garter wool needle needles yds cms ins`) {
		all[word] = true
	}
	for _, list := range []map[string]bool{describing, leading, besides, manners, whose, called, asides} {
		for word := range list {
			all[word] = true
		}
	}
	for word := range kindsOf {
		all[word] = true
	}
	for _, word := range keepers {
		all[word] = true
	}
	return all
}()

// Guess returns what a word, in small letters, was probably meant to be, or nothing: the
// nearest word of the vocabulary with the same first letter, if one letter is other, or two in a
// long word or one with digits; or if two letters have changed places.
func Guess(low string) (meant string) {
	if len(low) < 3 || len(low) > 20 || ordinary[low] {
		return ""
	}
	digits := strings.ContainsAny(low, "0123456789")
	best := 2
	if len(low) > 5 || digits && len(low) > 3 {
		best = 3
	}
	for _, word := range vocabulary {
		if abs(len(word)-len(low)) >= best || len(word) < 2 || digits != strings.ContainsAny(word, "0123456789") && len(low) < 5 {
			continue
		}
		d := levenshtein.ComputeDistance(low, word)
		switch {
		case d == 0:
			return ""
		case d == 2 && exchanged(low, word):
			d = 1
		case low[0] != word[0]:
			continue
		}
		if d < best {
			best, meant = d, word
		}
	}
	return meant
}

// exchanged reports whether two words differ in two neighbouring letters that changed places.
func exchanged(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := 0; i+1 < len(a); i++ {
		if a[i] != b[i] {
			return a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
		}
	}
	return false
}

func abs(n int) int { return max(n, -n) }
