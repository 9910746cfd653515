package view

import (
	"cmp"
	"fmt"

	"thenar/internal/app"
	"thenar/internal/paper"
	"thenar/internal/project"
	"thenar/internal/words"
)

// class is the class of the page: a desk with its paper, once there are pages.
func (d Design) class() string {
	if d.Graded == nil {
		return "design-page"
	}
	return "design-page design-desk " + d.Proofs.sheetClass()
}

// title says of how many sizes the page is.
func (d Design) title() string {
	if d.Graded == nil {
		return "Sizes, one text"
	}
	return words.Plural(len(d.Graded.Sizes), "size") + ", one text"
}

// toggle is a choice of few of how the pages are put.
type toggle struct {
	key, label, now string
	choices         []Choice
}

// toggles are what changes the pages beside the sizes and the texts.
func (d Design) toggles() []toggle {
	set := func(key, usual string) string { return cmp.Or(d.Doc.Pattern.Given(key), usual) }
	return []toggle{
		{app.SetPaper, "Paper", cmp.Or(d.Proofs.Options.Paper.Name, paper.A4.Name), []Choice{{paper.A4.Name, "A4"}, {paper.Letter.Name, "Letter"}}},
		{app.SetGrey, "Ink", tickValue(d.Proofs.Options.Grey), []Choice{{"", "colours"}, {"1", "greys"}}},
		{project.PatternWording, "Stitches", set(project.PatternWording, "short"), []Choice{{"short", "abbreviated"}, {"full", "in full"}, {"both", "both"}}},
		{project.PatternTold, "A gusset", set(project.PatternTold, "rhythm"), []Choice{{"rhythm", "by rhythm"}, {"rounds", "round by round"}}},
		{app.SetTerms, "Terms of the trade", string(words.TermsOf(d.Doc.Sheet.Given(app.SetTerms))), []Choice{{string(words.US), "US"}, {string(words.UK), "UK"}}},
		{project.PatternHands, "Hand", set(project.PatternHands, "both"), []Choice{{"right", "right"}, {"left", "left"}, {"both", "both hands"}}},
	}
}

// files are the words of the pattern by their addresses.
func (d Design) files() []Choice {
	at := MittAt(d.ID, DesignBelow)
	return []Choice{{at + "/words.html", "One page of HTML"}, {at + "/words.md", "Markdown"}, {at + "/words.txt", "Plain text"}}
}

// begins is what the ith page is called.
func (d Design) begins(i int) string {
	switch {
	case i == 0:
		return "title"
	case i < len(d.Begins):
		return d.Begins[i]
	}
	return ""
}

// written are the texts of a pattern that have a field on the page.
var written = []string{project.PatternTitle, project.PatternAbout, project.PatternDesigner, project.PatternCopyright, project.PatternStory, project.PatternNotes}

// photo is the address of a photograph of the pattern.
func (d Design) photo(p app.PatternPhoto) string { return MittAt(d.ID, DesignBelow+"/photo/"+p.Name) }

// photoSaid says what is to be seen on it.
func (d Design) photoSaid(p app.PatternPhoto) string {
	return cmp.Or(p.Caption, fmt.Sprintf("Photograph %d of the pattern", p.N))
}
