package view

import (
	"strings"

	"thenar/internal/project"
	"thenar/internal/words"
)

// patternNames are what the texts of a pattern are called that there is one of.
var patternNames = map[string]string{
	project.PatternTitle: "title", project.PatternAbout: "line under the title",
	project.PatternDesigner: "designer", project.PatternCopyright: "copyright line",
	project.PatternStory: "paragraph of the title page", project.PatternNotes: "notes to the knitter",
}

// patternTold says what became of what was written for the pattern. Sentences are counted
// if there is more than one.
func patternTold(was, now project.PatternTexts) (list []string) {
	sentences := map[string]int{}
	last := map[string]string{}
	for _, e := range was.Difference(now) {
		key, _, _ := project.PatternEdit(e.Column)
		kind, _, many := strings.Cut(key, " ")
		if many {
			kind += " "
		}
		switch before := was.Given(key); {
		case kind == project.PatternWas:
		case kind == project.PatternLine && e.Value == "":
			sentences["taken back"]++
			last["taken back"] = before
		case kind == project.PatternLine:
			sentences["reworded"]++
			last["reworded"] = e.Value
		case kind == project.PatternAfter && e.Value == "":
			sentences["taken out"]++
			last["taken out"] = before
		case kind == project.PatternAfter && before == "":
			sentences["added"]++
			last["added"] = e.Value
		case kind == project.PatternAfter:
			sentences["reworded"]++
			last["reworded"] = e.Value
		case many: // photographs and captions, by their numbers
			list = append(list, "pattern: "+key+onlyIf(e.Value == "", " taken out"))
		case patternNames[key] == "":
			list = append(list, "pattern: "+key+" "+clipped(e.Value))
		case e.Value == "":
			list = append(list, "pattern: "+patternNames[key]+" taken out")
		default:
			list = append(list, "pattern: "+patternNames[key]+" “"+clipped(e.Value)+"”")
		}
	}
	for _, what := range []string{"reworded", "added", "taken out", "taken back"} {
		switch n := sentences[what]; {
		case n == 1:
			list = append(list, "pattern: sentence "+what+": “"+clipped(last[what])+"”")
		case n > 1:
			list = append(list, "pattern: "+words.Plural(n, "sentence")+" "+what)
		}
	}
	return list
}

func onlyIf(is bool, text string) string {
	if is {
		return text
	}
	return ""
}
