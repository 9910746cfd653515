package app

import (
	"context"
	"maps"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/pattern"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/store"
)

// Sentences are the words of a pattern, line by line, with those written by hand.
type Sentences struct {
	Design
	Stamp    string // tells this text and what is written for it from what was before
	Passages []SentencePassage
	Lost     []pattern.Lost    // sentences that have no place
	Places   []SentencePlace   // where a lost one may be put
	Open     map[string]string // what is being written, by "line KEY" and "after KEY"
	Shown    map[string]string // what stood there when it was opened
	From     map[string]string // the keys of lost sentences that are written anew there
	Wrong    fault.Fields      // what is wrong with it
}

// SentencePassage is the words of a section.
type SentencePassage struct {
	Title string
	Lines []Sentence
}

// Sentence is a line of a pattern. The first of a passage is its heading, which has no words
// of its own.
type Sentence struct {
	Key   string
	Who   string          // the sizes that it is for, if others lack it: "Sizes 7 and 8"
	Own   string          // as the program writes it
	Rows  []string        // in place of that: a table
	Label bool            // it names a round whose ways follow
	Under bool            // it is one of these
	Line  []pattern.Piece // as it is written by hand; nil if it is not
	After []pattern.Piece // written behind it; nil for nothing
	Stays []string        // the numbers in both that are the designer's own
	Of    [2]string       // the keys under which the two are kept
	Words bool            // it may be worded otherwise
	Again bool            // it is told of the other hand, too, and is written there
}

// SentencePlace is a line at which a lost sentence may be put.
type SentencePlace struct {
	Key, Text string
	Words     bool // a sentence may stand in place of it
}

// OpenSentences returns the words of a pattern. The sentence of open, "line KEY" or "after
// KEY", is being written: out of the lost one of the key from, if there is such a one.
func (a *App) OpenSentences(ctx context.Context, id int64, open, from string) (Sentences, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return Sentences{}, err
	}
	s, t, err := a.sentences(ctx, &w)
	if err != nil {
		return s, err
	}
	if s.open(open); s.isLost(from) {
		if _, has := s.Open[open]; has {
			s.Open[open], s.From[open] = t.Moved(w.doc.Pattern.Given(from), open), from
		}
	}
	return s, nil
}

// sentences lists the words of a pattern, beside its text as the program writes it.
func (a *App) sentences(ctx context.Context, w *work) (Sentences, *pattern.Text, error) {
	s := Sentences{Design: a.design(ctx, w.ID, w.doc, w.doc.Design), Open: map[string]string{}, Shown: map[string]string{}, From: map[string]string{}}
	if s.Graded == nil {
		return s, nil, s.textless()
	}
	pl, done := a.plannerOf(w)
	defer done()
	t, _, err := plainTextOf(pl, s.Graded, w.doc, w.Marks, PatternAsk{}.kept(w.doc.Pattern))
	if err != nil {
		return s, nil, err
	}
	texts := w.doc.Pattern
	written, lost := t.ByHand(texts)
	s.Lost = lost
	passages := append([]pattern.Passage{t.Head.Needs}, t.Passages...)
	for i, p := range append([]pattern.Passage{written.Head.Needs}, written.Passages...) {
		s.Passages = append(s.Passages, passageOf(t, passages[i], p, texts))
	}
	var all []string
	for _, p := range s.Passages {
		for i := range p.Lines {
			l := &p.Lines[i]
			l.Again = slices.Contains(all, l.Key)
			if all = append(all, l.Key, l.Own); l.Own != "" && !l.Again {
				s.Places = append(s.Places, SentencePlace{l.Key, p.Title + ": " + l.Own, l.Words})
			}
		}
	}
	s.Stamp = stamp([]any{texts, all})
	return s, t, nil
}

// passageOf returns the lines of a passage with what is written by hand for them.
func passageOf(t *pattern.Text, own, written pattern.Passage, texts project.PatternTexts) SentencePassage {
	out := SentencePassage{Title: t.Titled(own), Lines: []Sentence{{Key: own.Key()}}}
	for i, l := range own.Lines {
		one := Sentence{Key: l.Key, Words: l.Rewordable(), Under: l.Under, Label: l.Label != nil && l.Body == nil}
		if l.Table != nil {
			one.Rows = t.Lines(l.Table)
		} else {
			one.Own = l.Own()
			one.Who = strings.TrimSuffix(t.Told(own, own.Lines[i]), one.Own)
		}
		out.Lines = append(out.Lines, one)
	}
	for _, l := range written.Lines {
		at := slices.IndexFunc(out.Lines, func(s Sentence) bool { return s.Key == l.Key })
		if !l.ByHand || at < 0 {
			continue
		}
		to := &out.Lines[at]
		if l.After {
			to.After, to.Of[1] = l.Body, l.Written
		} else {
			to.Line, to.Of[0] = l.Body, l.Written
		}
		to.Stays = append(to.Stays, pattern.Stays(texts.Given(l.Written))...)
	}
	return out
}

// open opens a sentence to be written: with what stands there.
func (s *Sentences) open(key string) {
	place, isLine := strings.CutPrefix(key, project.PatternLine)
	if !isLine {
		place = strings.TrimPrefix(key, project.PatternAfter)
	}
	for _, p := range s.Passages {
		for _, l := range p.Lines {
			if l.Key != place || l.Again || isLine && !l.Words {
				continue
			}
			switch {
			case isLine && l.Line == nil:
				s.Shown[key] = l.Own
			case isLine:
				s.Shown[key] = pattern.Plain(l.Line)
			default:
				s.Shown[key] = pattern.Plain(l.After)
			}
			s.Open[key] = s.Shown[key]
		}
	}
}

// errSentences says that another window changed the text first.
var errSentences = fault.New(fault.Conflict, "Another window changed this text in between.")

// What a form of sentences holds beside those that are typed: what stood there, as "shown"
// and the key; and the buttons, each with the key of a sentence.
const (
	shownField = "shown "
	fromField  = "from " // and the key: of a lost sentence that is written anew there
	backField  = "back"  // to be taken back
	putField   = "put"   // a lost one, to be put at the line of the field "to" and its key
	toField    = "to "   // the key of a line
	openField  = "open"  // to be written next
)

// MostSentence is the most characters that may be typed of a sentence.
const MostSentence = 1000

// SaveSentences saves what was typed of the sentences of a pattern: all that a form holds, and
// what its button asks for. It returns the key of a sentence that is to be written next, and of
// the lost one that it is made from. If another window changed the text since the form was made, nothing is saved, and what comes
// back has what was typed beside it.
func (a *App) SaveSentences(ctx context.Context, id int64, typed Typed) (s Sentences, open, from string, err error) {
	open, from = strings.Join(typed[openField], ""), strings.Join(typed[putField], "")
	if kind, _, ok := strings.Cut(from, " "); ok {
		open = kind + " " + strings.Join(typed[toField+from], "")
	}
	_, err = a.change(ctx, id, wantsChart(), func(w *work, _ *project.Planner) (store.Change, error) {
		var t *pattern.Text
		var err error
		if s, t, err = a.sentences(ctx, w); err != nil {
			return store.Change{}, err
		}
		s.typed(typed)
		if len(s.Wrong) > 0 {
			return store.Change{}, s.Wrong
		}
		if strings.Join(typed[stampField], "") != s.Stamp {
			return store.Change{}, errSentences
		}
		next := w.doc
		if next.Pattern, err = s.reworded(t, typed); err != nil {
			return store.Change{}, err
		}
		if len(next.Pattern.Difference(w.doc.Pattern)) == 0 {
			return store.Change{}, nil
		}
		if err := next.Check(); err != nil {
			return store.Change{}, err
		}
		return w.decision(next)
	})
	return s, open, from, err
}

// typed opens the sentences that a form holds, with what was typed.
func (s *Sentences) typed(form Typed) {
	for name, values := range form {
		if !strings.HasPrefix(name, project.PatternLine) && !strings.HasPrefix(name, project.PatternAfter) {
			continue
		}
		s.Open[name], s.Shown[name] = values[0], strings.Join(form[shownField+name], "")
		if from := strings.Join(form[fromField+name], ""); s.isLost(from) {
			s.From[name] = from
		}
		if why := plain.Lines(values[0], MostSentence); why != "" {
			s.Wrong.Add(name, "%s", why)
		}
	}
	slices.SortFunc(s.Wrong, func(a, b fault.Field) int { return strings.Compare(a.Path, b.Path) })
}

// reworded returns what is written for a pattern with what a form changes of it.
func (s *Sentences) reworded(t *pattern.Text, form Typed) (texts project.PatternTexts, err error) {
	texts = s.Doc.Pattern
	for _, key := range slices.Sorted(maps.Keys(s.Open)) {
		if oneLine(s.Open[key]) == oneLine(s.Shown[key]) {
			continue
		}
		kept, mine := s.keptAs(key)
		before := texts.Given(kept)
		if kept != key && mine {
			texts = texts.With(kept, "").With(project.PatternWas+kept, "")
		}
		if texts, _, err = t.Reword(texts.With(key, before), key, s.Open[key]); err != nil {
			return nil, err
		}
		if from := s.From[key]; from != "" && from != key {
			texts = texts.With(from, "").With(project.PatternWas+from, "")
		}
	}
	if back := strings.Join(form[backField], ""); back != "" {
		texts = texts.With(back, "").With(project.PatternWas+back, "")
	}
	return texts, nil
}

// isLost reports whether a sentence has lost its place.
func (s *Sentences) isLost(key string) bool {
	return slices.ContainsFunc(s.Lost, func(l pattern.Lost) bool { return l.Key == key })
}

// keptAs returns the key under which the sentence is kept that stands at another one's place,
// and whether it stands at no other.
func (s *Sentences) keptAs(key string) (kept string, alone bool) {
	kept, stands := key, 0
	for _, p := range s.Passages {
		for _, l := range p.Lines {
			for i, kind := range []string{project.PatternLine, project.PatternAfter} {
				if kind+l.Key == key && l.Of[i] != "" {
					kept = l.Of[i]
				}
			}
		}
	}
	for _, p := range s.Passages {
		for _, l := range p.Lines {
			if !l.Again && slices.Contains(l.Of[:], kept) {
				stands++
			}
		}
	}
	return kept, stands < 2
}

// oneLine returns a text without spaces that make no difference.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
