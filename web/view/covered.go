package view

import (
	"net/url"

	"github.com/a-h/templ"

	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// coveredLine is how far a finger is covered, of what it may be.
type coveredLine struct {
	Key, Name string
	Choices   []thumbChoice
}

// endings are the ways to end a finger, with the value of each.
var endings = []mitt.FingerEnd{mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger}

// endsDrawn returns the ends with their drawings.
func (a Answer) endsDrawn() []thumbChoice {
	var list []thumbChoice
	for i, end := range endings {
		drawing := SVG(picture.FingerEnd(end, a.Side == project.Left), false)
		list = append(list, thumbChoice{Name: fingerEnds[i].Words, Picture: templ.Raw(drawing)})
	}
	return list
}

// covered returns a line for all four fingers at once, for each finger and for the thumb.
func (a Answer) covered() []coveredLine {
	p := a.Out.Plan
	all := make([]string, len(eachFinger))
	for i, f := range eachFinger {
		all[i] = mitt.PathFinger(f)
	}
	now := map[string]mitt.FingerEnd{mitt.PathThumbEnd: p.Make.ThumbEnd}
	for _, f := range eachFinger {
		now[mitt.PathFinger(f)] = p.Fingers.Each[f].End
	}
	lines := []coveredLine{coveredOf("all", "All four", all, now)}
	for i, f := range eachFinger {
		lines = append(lines, coveredOf(all[i], fingerName(f), all[i:i+1], now))
	}
	return append(lines, coveredOf(mitt.PathThumbEnd, "Thumb", []string{mitt.PathThumbEnd}, now))
}

// coveredOf returns the line that ends what some paths stand for; an end is chosen if all of
// them have it.
func coveredOf(key, name string, paths []string, now map[string]mitt.FingerEnd) coveredLine {
	line := coveredLine{Key: key, Name: name}
	for i, end := range endings {
		sets, chosen := url.Values{}, true
		for _, path := range paths {
			sets.Set(path, fingerEnds[i].Value)
			chosen = chosen && (now[path] == end || now[path] == "" && end == mitt.FullFinger)
		}
		line.Choices = append(line.Choices, thumbChoice{Key: string(end), Name: fingerEnds[i].Words, Sets: sets.Encode(), Chosen: chosen})
	}
	return line
}

// capSets is what putting a mitten's cap over the fingers writes, as a query: fingers that are
// closed become half. Taking it off leaves them so.
func (a Answer) capSets() string {
	p := a.Out.Plan
	sets := url.Values{mitt.PathCap: {""}}
	if !p.Make.Cap {
		sets.Set(mitt.PathCap, "true")
		for _, f := range eachFinger {
			if p.Fingers.Each[f].Closed {
				sets.Set(mitt.PathFinger(f), string(mitt.HalfFinger))
			}
		}
	}
	return sets.Encode()
}
