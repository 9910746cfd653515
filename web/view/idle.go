package view

import (
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/tryon"
)

// idle returns what the mitt has no use or place for as it is made; nil if all has its use.
func (a Answer) idle() *project.Idle {
	if now := project.Now(a.Out.Kinds); now != nil && now.Count() > 0 {
		return &now.Idle
	}
	return nil
}

// warned returns the warnings of the plan. What is listed by itself is left out of them.
func (a Answer) warned() []mitt.Warning {
	if a.idle() == nil {
		return a.Out.Plan.Warnings
	}
	var list []mitt.Warning
	for _, w := range a.Out.Plan.Warnings {
		if w.Code != mitt.PinsWithoutEffect && w.Code != mitt.MakeWithoutEffect {
			list = append(list, w)
		}
	}
	return list
}

// backWords says what a button does that makes the mitt so that more has its use.
func backWords(w *project.ThumbWay) string {
	name := thumbNamed(*w)[0]
	if w.Kind != "" {
		return "Make it a " + name
	}
	return "Make it with: " + name
}

func toldWords(z tryon.Zone) string { return "what a try said of the " + z.Words() }
