package picture

import (
	"math"
	"slices"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/stitch"
)

// Panel is the fit curve of the hand or of the thumb in a bench's frame. Its texts are left to
// the page, which shows them at one size whatever the size of the drawing.
type Panel struct {
	Scene     *draw.Scene
	Low, High float64 // girths at its left and right edge, in mm, with a labelled tick at every Step
	Step      float64
	Foot, Top float64 // levels of its lower and upper edge, as shares of the frame's height
	Ends      []End   // of its sections, from the cast-on up
}

// End is a section of a panel, with the girths of its last round.
type End struct {
	fit.Row
	Level float64    // the middle of the section, as a share of the frame's height
	Bands []fit.Band // each once, from its first round up
}

// Breadths of a bench's curves, in mm of the page.
const (
	curveWidth = 78.0  // of the hand's panel
	curveStep  = 20.0  // from one labelled tick to the next; girths begin and end at one
	curveWide  = 150.0 // mm of girth from which on only every other tick is labelled
)

// Curves draws the girths of fabric and hand by their height above the cast-on, in the bench's
// frame; across, girths have a scale of their own, the same for hand and thumb. Behind the curves
// lie the girths at which a fabric is snug and easy there, by their bands; the page draws them
// with the patterns "snug" and "easy".
func (b *Bench) Curves(rows []fit.Row, bands fit.Bands, o FitOptions) []Panel {
	c := &fitCurve{o: o, unit: o.hand().unit()}
	hand, thumb, fingers := splitDigits(rows)
	var panels []Panel
	scale, step := 0.0, curveStep
	for _, part := range append([][]fit.Row{hand}, thumb...) {
		if len(part) == 0 {
			continue
		}
		p := Panel{Low: math.Inf(1), High: math.Inf(-1)}
		p.Foot, p.Top = b.Level(part[0].AboveCastOn-part[0].Height), b.Level(part[len(part)-1].AboveCastOn)
		shown := part
		if len(fingers) > 0 { // beside them a thumb's tip is narrower than its panel, as theirs are
			shown = part[:uptoTip(part)]
		}
		for _, r := range shown {
			p.Low = min(p.Low, r.Fabric*(1-o.Half), 0.93*r.Body)
			p.High = max(p.High, r.Fabric*(1+o.Half), 1.07*r.Body)
		}
		if p.High-p.Low > curveWide {
			step = 2 * curveStep
		}
		p.Step, p.Low, p.High = step, math.Floor(p.Low/step)*step, math.Ceil(p.High/step)*step
		if scale == 0 {
			scale = curveWidth / (p.High - p.Low)
		}
		p.Scene = &draw.Scene{Width: (p.High - p.Low) * scale, Height: b.Height, Label: c.label(part)}
		d := benchCurve{b, &p, scale, bands, c}
		d.draw(part)
		panels = append(panels, p)
	}
	return panels
}

// FingerCurves draws the curves of each finger in the bench's frame, in the order worked: none
// without fingers. They are narrow, and stand above the hand's panel, whose rounds end where
// theirs begin. Their girths have one scale, the same axis for all; a tip is narrower than that.
func (b *Bench) FingerCurves(rows []fit.Row, bands fit.Bands, o FitOptions) (panels []Panel) {
	c := &fitCurve{o: o, unit: o.hand().unit()}
	_, _, fingers := splitDigits(rows)
	low, high := fingerRange(fingers, o.Half)
	low, high = math.Floor(low/curveStep)*curveStep, math.Ceil(high/curveStep)*curveStep
	for _, part := range fingers {
		p := Panel{Low: low, High: high, Step: curveStep}
		p.Foot, p.Top = b.Level(part[0].AboveCastOn-part[0].Height), b.Level(part[len(part)-1].AboveCastOn)
		p.Scene = &draw.Scene{Width: fingerCurveWidth, Height: b.Height, Label: c.label(part)}
		d := benchCurve{b, &p, fingerCurveWidth / (high - low), bands, c}
		d.draw(part)
		panels = append(panels, p)
	}
	return panels
}

// fingerCurveWidth is the breadth of a finger's curves in mm of the page: four of them stand
// above the hand's.
const fingerCurveWidth = 17.0

// benchCurve draws one panel.
type benchCurve struct {
	*Bench
	p     *Panel
	scale float64
	bands fit.Bands
	words *fitCurve
}

func (d *benchCurve) x(girth float64) float64 {
	return (min(max(girth, d.p.Low), d.p.High) - d.p.Low) * d.scale
}
func (d *benchCurve) y(above float64) float64 { return d.Foot - above }

func (d *benchCurve) draw(rows []fit.Row) {
	s := d.p.Scene
	foot := d.y(rows[0].AboveCastOn - rows[0].Height)
	var grid, axis draw.Pen
	for _, part := range sections(rows) {
		last := part[len(part)-1]
		grid.Move(0, d.y(last.AboveCastOn)).Line(s.Width, d.y(last.AboveCastOn))
		said := part
		if last.Section.Over() == stitch.OverDigit { // its tip closes, and is no girth
			said = part[:uptoTip(part)]
		}
		end := End{Row: said[len(said)-1], Level: d.Level(last.AboveCastOn - last.Height/2)}
		for _, run := range bandRuns(said) {
			if !slices.Contains(end.Bands, run[0].Band) {
				end.Bands = append(end.Bands, run[0].Band)
			}
		}
		d.p.Ends = append(d.p.Ends, end)
	}
	for g := d.p.Low; g <= d.p.High+0.5; g += curveStep / 2 {
		axis.Move(d.x(g), foot+2).Line(d.x(g), foot+4)
	}
	axis.Move(0, foot+2).Line(s.Width, foot+2)
	for _, profile := range profiles(rows) {
		d.area(profile, "fit-snug", "url(#snug)", 1/(1+d.bands.Tight), 1/(1+d.bands.Snug))
		d.area(profile, "fit-easy", "url(#easy)", 1/(1+d.bands.Snug), 1/(1+d.bands.Loose))
	}
	s.Path(grid.String(), draw.Style{Class: "fit-grid", Stroke: gridColour, Width: 0.3})
	s.Path(axis.String(), draw.Style{Class: "spine", Stroke: inkColour, Width: 0.4})
	for _, profile := range profiles(rows) {
		d.curves(profile)
	}
	d.rounds(rows)
}

// area draws where a fabric of so many times the body would lie, from a share to another.
func (d *benchCurve) area(profile []fit.Row, class, fill string, from, to float64) {
	var pen draw.Pen
	var low, high []point
	for i, r := range profile {
		below := r.Body
		if i > 0 {
			below = profile[i-1].Body
		}
		for _, at := range []struct{ body, above float64 }{{below, r.AboveCastOn - roundHeight(r)}, {r.Body, r.AboveCastOn}} {
			low = append(low, point{d.x(at.body * from), d.y(at.above)})
			high = append(high, point{d.x(at.body * to), d.y(at.above)})
		}
	}
	slices.Reverse(high)
	drawThrough(&pen, append(low, high...))
	pen.Close()
	d.p.Scene.Path(pen.String(), draw.Style{Class: class, Fill: fill})
}

// curves draws the fabric's girth, with its interval, and the body's.
func (d *benchCurve) curves(profile []fit.Row) {
	stairs := func(times float64) []point {
		var out []point
		for _, r := range profile {
			x, y := d.x(r.Fabric*times), d.y(r.AboveCastOn)
			out = append(out, point{x, y + roundHeight(r)}, point{x, y})
		}
		return out
	}
	s, half := d.p.Scene, d.words.o.Half
	if half > 0 {
		high := stairs(1 + half)
		slices.Reverse(high)
		var pen draw.Pen
		drawThrough(&pen, append(stairs(1-half), high...))
		pen.Close()
		s.PathWith(pen.String(), draw.Style{Class: "fit-interval", Fill: cardColour, Stroke: fifthColour, Width: 0.3}, draw.Attr{Name: "fill-opacity", Value: "0.7"})
	}
	var fabric, body draw.Pen
	drawThrough(&fabric, stairs(1))
	s.Path(fabric.String(), draw.Style{Class: "fit-fabric", Stroke: inkColour, Width: 1.1, Round: true})
	first := profile[0]
	points := []point{{d.x(first.Body), d.y(first.AboveCastOn) + roundHeight(first)}}
	for _, r := range profile {
		points = append(points, point{d.x(r.Body), d.y(r.AboveCastOn)})
	}
	drawThrough(&body, points)
	s.Path(body.String(), draw.Style{Class: "fit-body", Stroke: pencilColour, Width: 0.7, Dash: "2.4 1.6"})
}

// rounds lays an invisible band for the page's script over every round.
func (d *benchCurve) rounds(rows []fit.Row) {
	s := d.p.Scene
	for _, part := range sections(rows) {
		name := draw.Attr{Name: "data-section", Value: string(part[0].Section)}
		s.Group("section", name, draw.Attr{Name: "data-rounds", Value: strconv.Itoa(len(part))})
		for _, r := range part {
			n := strconv.Itoa(r.Round)
			s.PathWith(new(draw.Pen).Rect(0, d.y(r.AboveCastOn), s.Width, roundHeight(r)).String(), draw.Style{Class: "band", Fill: inkColour},
				draw.Attr{Name: "fill-opacity", Value: "0"}, name,
				draw.Attr{Name: "data-from", Value: n}, draw.Attr{Name: "data-to", Value: n}, draw.Attr{Name: "data-says", Value: d.words.says(r)})
		}
		s.End()
	}
}

// Thumb reports whether a panel is the thumb's.
func (p *Panel) Thumb() bool { return p.Ends[0].Section.OnThumb() }

// Part returns the first section of a panel: of a finger's the finger.
func (p *Panel) Part() stitch.Part { return p.Ends[0].Section }
