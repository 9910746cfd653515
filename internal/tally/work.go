package tally

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/written"
)

// wasteSet is what stitches are called that were knitted with waste yarn.
const wasteSet = "waste"

// items works what a round tells; it reports whether that could be done.
func (w *needles) items(p *pass, list []written.Item) bool {
	for i := range list {
		if !w.spends(p, &list[i], 1) {
			return false
		}
		if list[i].Reach == written.ToMarker && len(p.old) == 0 && !p.open && !w.lost && (w.rows || i < len(list)-1) {
			return p.fails(Misplaced, &list[i], "No marker was placed that could be meant.")
		}
		if p.failed != nil || !w.item(p, &list[i]) {
			return false
		}
	}
	return true
}

// fails keeps the first thing that went wrong in a round.
func (p *pass) fails(k Kind, i *written.Item, format string, args ...any) bool {
	if p.failed == nil {
		p.failed = &Finding{Kind: k, At: i.At, To: i.To, Message: fmt.Sprintf(format, args...)}
		if i.At == (written.Spot{}) && p.from != nil { // "work even" names no stitch
			p.failed.At, p.failed.To = p.from.At, p.from.To
		}
	}
	return false
}

// item works one thing that a round tells.
func (w *needles) item(p *pass, i *written.Item) bool {
	times := 1
	if i.Times.Written() {
		if times = i.Times.For(w.size); times == written.None {
			times = 0
		}
		if i.Either && p.either {
			times--
		}
	}
	if times > most {
		return p.fails(Unread, i, "%d times is more than anybody knits.", times)
	}
	if p.turning {
		if i.Does == written.CastOn {
			p.after, p.on = p.after+times, p.on+times
			return true
		}
		if i.Does == written.Turn {
			return true
		}
		if !w.spends(p, i, roundSteps+len(p.old)) {
			return false
		}
		w.goesBack(p)
	}
	switch i.Does {
	case written.Unread:
		p.open = true
		p.fails(Unread, i, "This was not understood.")
		p.failed.Cure = w.report.meant(i.Word)
		return false
	case written.Stitch:
		p.idle = false
		if i.Charted {
			if p.charted = true; i.Reach == written.NoReach && !i.Times.Written() {
				p.loose = true // nobody knows over how many
				return true
			}
		}
		if i.Reach != written.NoReach {
			return w.fill(p, i)
		}
		return w.stitches(p, i, times)
	case written.Together:
		if i.Some {
			now := w.size
			defer func() { w.size = now }()
			if w.size = slices.Index(i.For, w.index); w.size < 0 {
				return true // it is told for other sizes
			}
		}
		return w.together(p, i, times)
	case written.CastOn:
		p.out, p.on = p.out+times, p.on+times
		p.note(i, times, 0, 1)
	case written.PickUp:
		p.out += times
		p.note(i, times, 0, 1)
	case written.Hold:
		return w.hold(p, i, times)
	case written.Leave:
		return w.leave(p, i, times)
	case written.Waste:
		p.idle = false
		if !w.stitches(p, i, times) {
			return false
		}
		if at := len(w.held) - 1; at >= 0 && w.held[at].of == p {
			w.held[at].n += times // in several yarns, side by side
			p.of(&w.held[at])
			return true
		}
		w.aside(p, held{name: wasteSet, n: times, known: true, waste: true, at: i.At, to: i.To, of: p})
	case written.TakeIn:
		p.idle = false
		return w.takeIn(p, i, times)
	case written.BindOff:
		p.idle = false
		if !w.eats(p, i, times, 1, 0) {
			return p.short(i, p.in-p.at, times)
		}
		p.off += times
	case written.Turn:
		p.turn()
	default:
		return w.mark(p, i)
	}
	return true
}

// short tells that there are not enough stitches left.
func (p *pass) short(i *written.Item, left, wanted int) bool {
	if left <= 0 {
		return p.fails(Short, i, "There is no stitch left in the round for this.")
	}
	return p.fails(Short, i, "Only %s left in the round here, and this takes %d.", stitches(left, "is", "are"), wanted)
}

// stitches works a stitch so many times.
func (w *needles) stitches(p *pass, i *written.Item, times int) bool {
	left := p.in - p.at
	switch {
	case w.eats(p, i, times, i.In, i.Out):
		return true
	case i.Out < 0:
		return p.fails(Short, i, "There is no stitch to pass over.")
	}
	return p.short(i, left, times*i.In)
}

// eats works a stitch so many times, and spends the steps that this takes.
func (w *needles) eats(p *pass, i *written.Item, times, in, out int) bool {
	if !p.many(times, in, out) || (in != 1 || out != 1) && !w.spends(p, i, times) {
		return false
	}
	p.note(i, times, in, out)
	return true
}

// target returns the stitch of the round below that something is worked to.
func (w *needles) target(p *pass, i *written.Item) (to int, ok bool) {
	before := 0
	if i.Before.Written() {
		before = max(0, i.Before.For(w.size))
	}
	switch i.Reach {
	case written.ToMarker:
		at := p.marker()
		if at-before < p.at && at < p.in {
			return at, p.fails(Misplaced, i, "The marker is passed already, or fewer than %d before it are left.", before)
		}
		return at - before, true
	case written.ToNeedle:
		return p.needle - before, true
	case written.ToTheGap:
		if p.stretch != nil {
			return p.stretch.gap - before, true
		}
	}
	if p.at > p.end {
		return p.in - before, true
	}
	return p.end - before, true
}

// fill works a stitch to somewhere.
func (w *needles) fill(p *pass, i *written.Item) bool {
	if p.open {
		p.at = p.in
		return true
	}
	if w.loosens(p, i) {
		return w.looseFill(p, i.In, i.Out)
	}
	to, ok := w.target(p, i)
	if !ok {
		return false
	}
	left := to - p.at
	if left == 0 && p.past && i.Reach == written.ToEnd && !i.Before.Written() && len(p.old) > 0 && p.grew >= 0 {
		w.tell(w.placed(Finding{Kind: Misplaced, At: i.At, To: i.To, Look: w.marked, Message: "The round ends at the marker before this: one marker was never placed."}))
	}
	if left < 0 {
		return p.fails(Short, i, "%s too few are left before that.", stitches(-left, "", ""))
	}
	if i.In > 0 && left%i.In != 0 {
		return p.fails(LeftOver, i, "It takes %d stitches at a time, and %d are there: %d left over.", i.In, left, left%i.In)
	}
	if i.In < 1 {
		return p.fails(Unread, i, "This can't be worked to there.")
	}
	return w.eats(p, i, left/i.In, i.In, i.Out)
}

// together works what is in brackets.
func (w *needles) together(p *pass, i *written.Item, times int) bool {
	if i.Reach == written.NoReach {
		if w.onNeedles(p, i, times) {
			return p.failed == nil
		}
		for range times {
			if !w.items(p, i.Items) {
				return false
			}
		}
		return true
	}
	if p.open {
		p.at, p.idle = p.in, false
		return true
	}
	if w.loosens(p, i) {
		p.idle = false
		return w.looseFill(p, eaten(i.Items, w.size), made(i.Items, w.size))
	}
	to, ok := w.target(p, i)
	if !ok {
		return false
	}
	from := p.at
	if each := eaten(i.Items, w.size); each > 0 && to >= from && (to-from)%each != 0 {
		if i.Even && w.rows && each == made(i.Items, w.size) {
			return w.eats(p, i, to-from, 1, 1) // a rib that has edges
		}
		left := (to - from) % each
		for p.at+each <= to && w.items(p, i.Items) {
		}
		p.failed = &Finding{
			Kind: LeftOver, At: i.At, To: i.To, Found: to - from, Expected: to - from - left,
			Message: fmt.Sprintf("The repeat takes %s, and %s for it: %d times, and %d left over.", stitches(each, "", ""), lower(there(to-from)), (to-from)/each, left),
			Cure:    cureOfRepeat(each, left),
		}
		return false
	}
	for n := 0; p.at < to; n++ {
		before := p.at
		if n > most || !w.items(p, i.Items) {
			return false
		}
		if p.loose || p.open { // nobody knows how often
			p.open, p.at, w.unsure = true, p.in, true
			return true
		}
		if p.at == before {
			return p.fails(Unread, i, "This takes no stitch, so it never gets there.")
		}
	}
	if p.at > to {
		return p.fails(LeftOver, i, "The repeat doesn't end there: its last stitch goes %d further.", p.at-to)
	}
	return true
}

// cureOfRepeat says what would make a repeat come out.
func cureOfRepeat(each, left int) string {
	return fmt.Sprintf("It comes out with %d fewer or %d more.", left, each-left)
}

// eaten returns how many stitches a list takes, or 0 if that depends on where it is worked.
func eaten(list []written.Item, size int) (n int) {
	for _, i := range list {
		times := 1
		if i.Times.Written() {
			times = max(0, i.Times.For(size))
		}
		switch {
		case i.Some, i.Reach != written.NoReach, i.Does == written.Hold && !i.Times.Written(), i.Does == written.Unread:
			return 0
		case i.Does == written.Together:
			one := eaten(i.Items, size)
			if one == 0 {
				return 0
			}
			n += times * one
		default:
			n += times * i.In
		}
	}
	return n
}

// stitches is "1 stitch is", "3 stitches are".
func stitches(n int, is, are string) string {
	text, verb := fmt.Sprintf("%d stitches", n), are
	if n == 1 {
		text, verb = "1 stitch", is
	}
	if verb != "" {
		text += " " + verb
	}
	return text
}

// there is "There is 1 stitch", "There are 3 stitches".
func there(n int) string {
	if n == 1 {
		return "There is 1 stitch"
	}
	return fmt.Sprintf("There are %d stitches", n)
}

func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }
