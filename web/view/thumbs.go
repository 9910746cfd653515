package view

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// thumbChoice is one way to make a mitt round its thumb, as a person chooses it.
type thumbChoice struct {
	Key, Name string
	Work      string // what it takes in technique
	Fit       string // how it fits this hand, in mm; empty where it can't be made
	Refused   string // why it can't; empty where it can
	Loses     string // what it has no use or place for; empty if all stays
	Sets      string // what choosing it writes, as a query
	Picture   templ.Component
	Chosen    bool
}

// Name and technique of each way to make a mitt round its thumb (common practice, no
// source).
var thumbNames = map[mitt.Construction][2]string{
	mitt.ByGusset: {"gusset at the side", "Increases to count, a bridge to pick up, two corners to close."},
	mitt.Straight: {"straight thumb", "Waste yarn, no gusset to count; two ends more to weave in."},
	mitt.Slit:     {"slit", "Rows to and fro for a while, then joined again; no thumb to knit."},
	mitt.NoThumb:  {"no thumb", "A plain tube: no gusset to count, no ends at a thumb."},
}

// kindWork says what a kind takes in technique (common practice, no source).
var kindWork = map[mitt.Kind]string{
	mitt.Fingerless: "One tube and a short thumb; the fingers are free.",
	mitt.Mitten:     "One tube with a top to close, and a thumb.",
	mitt.Glove:      "Five tubes that share one hand; bridges to pick up between them.",
	mitt.Thumbless:  "One tube with a top to close; no thumb to knit.",
	mitt.Wristlet:   "One short tube; hand and thumb are free.",
}

// inPalm names a gusset that sits in the palm, and what it takes.
var inPalm = [2]string{"gusset in the palm", "Counted as at the side; the inset stitches are counted, too."}

// inSeam names an opening in a flat piece, and what it takes.
var inSeam = [2]string{"slit", "A stretch of the seam stays open; no thumb to knit, one seam on the thumb’s side."}

// thumbNamed returns name and technique of a way.
func thumbNamed(w project.ThumbWay) [2]string {
	if kind := w.Kind; kind != "" {
		if w.Plan != nil { // it may be without a thumb
			kind = w.Plan.Kind
		}
		return [2]string{kind.Words(), kindWork[kind]}
	}
	if w.Place == mitt.InPalm {
		return inPalm
	}
	if w.Construction == mitt.Slit && w.Plan != nil && w.Plan.Make.Flat {
		return inSeam
	}
	return thumbNames[w.Construction]
}

// thumbs returns the ways to make the mitt round its thumb, with the drawing of each.
func (a Answer) thumbs() []thumbChoice {
	return a.choicesOf(a.Out.Thumbs)
}

// kinds returns the kinds that the mitt may be, with the drawing of each.
func (a Answer) kinds() []thumbChoice { return a.choicesOf(a.Out.Kinds) }

func (a Answer) choicesOf(ways []project.ThumbWay) []thumbChoice {
	list := make([]thumbChoice, 0, len(ways))
	for _, w := range ways {
		named := thumbNamed(w)
		c := thumbChoice{Key: string(w.Kind) + string(w.Construction) + string(w.Place), Name: named[0], Work: named[1], Chosen: w.Chosen, Sets: setsOf(w)}
		if w.Plan == nil {
			c.Refused = a.refusedWords(w)
			list = append(list, c)
			continue
		}
		c.Fit = a.thumbFit(w)
		c.Loses = a.losesWords(w)
		c.Picture = templ.Raw(SVG(picture.Small(w.Plan, picture.SmallOptions{Left: a.Side == project.Left}), false))
		list = append(list, c)
	}
	return list
}

// thumbNow names the way that the mitt is made.
func (a Answer) thumbNow() string {
	for _, w := range a.Out.Thumbs {
		if w.Chosen {
			return thumbNamed(w)[0]
		}
	}
	return ""
}

// thumbFit says how near a way comes to the hand.
func (a Answer) thumbFit(w project.ThumbWay) string {
	return fmt.Sprintf("At worst %s off; stretched by %.0f\u00a0%% at most.", words.Size(w.Worst, a.Unit), 100*max(w.Stretch, 0))
}

// setsOf returns what a way writes into the form, as a query.
func setsOf(w project.ThumbWay) string {
	parts := make([]string, len(w.Sets))
	for i, s := range w.Sets {
		parts[i] = url.QueryEscape(s.Path) + "=" + url.QueryEscape(s.Text)
	}
	return strings.Join(parts, "&")
}

// refusedWords says why a way can't be made, in the words of the form.
func (a Answer) refusedWords(w project.ThumbWay) string {
	names := mitt.Names{Kind: a.Names.Kind.Whole().By(w.Construction), Make: a.Names.Make}
	if names.Make.Construction = w.Construction; w.Kind != "" {
		names = mitt.Names{Kind: w.Kind, Make: a.Names.Make}
	}
	var list []string
	for _, f := range w.Refused {
		message := f.Message
		if field, ok := makeField(f.Path); ok {
			message = choicesWorded(field, message)
		}
		label := labelIn(names, f.Path)
		if strings.HasSuffix(label, " is") {
			message = strings.TrimPrefix(message, "is ")
		}
		list = append(list, label+" "+message+".")
	}
	return strings.Join(list, " ")
}

// losesWords lists what a way has no use or no place for.
func (a Answer) losesWords(w project.ThumbWay) string {
	var list []string
	for _, n := range w.Unused {
		list = append(list, "fixed "+lower(a.Names.Label(n)))
	}
	list = append(list, w.Choices...)
	list = append(list, marksBySection(w.Lost)...)
	for _, z := range w.Told {
		list = append(list, toldWords(z))
	}
	if len(list) == 0 {
		return ""
	}
	return "No use here for " + words.Listed(list) + "."
}

// marksBySection counts marks by the part of the mitt: "12 marks on the gusset".
func marksBySection(lost []chart.Edit) []string {
	counts, order := map[string]int{}, []string(nil)
	for _, e := range lost {
		part := e.Section.Words()
		if counts[part]++; !slices.Contains(order, part) {
			order = append(order, part)
		}
	}
	for i, part := range order {
		order[i] = words.Plural(counts[part], "mark") + " on the " + part
	}
	return order
}
