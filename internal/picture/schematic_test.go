package picture

import (
	"fmt"
	"maps"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// waysMade are sheets of every kind and construction, by what they add to a sheet.
var waysMade = map[string]sheet.Sheet{
	"fingerless": {"kind": "fingerless"}, "mitten": {"kind": "mitten"}, "glove": {"kind": "glove"}, "thumbless": {"kind": "mitten_without_thumb"},
	"wristlet": {"kind": "fingerless", "thumb.construction": "none"},
	"straight": {"kind": "mitten", "thumb.construction": "straight"}, "slit": {"kind": "fingerless", "thumb.construction": "slit"},
	"inset": {"kind": "mitten", "thumb.place": "palm", "thumb.inset": "3"}, "down": {"kind": "mitten", "piece.direction": "down"}, "flat": {"kind": "fingerless", "piece.flat": "true"},
	"gauntlet": {"kind": "mitten", "cuff.kind": "gauntlet"}, "hem": {"kind": "fingerless", "cuff.kind": "hem"}, "rolled": {"kind": "mitten", "cuff.kind": "rolled", "piece.direction": "down"},
	"garter": {"kind": "glove", "cuff.kind": "garter", "thumb.construction": "straight"},
	"cap":    {"kind": "glove", "fingers.little": "half", "fingers.ring": "half", "fingers.middle": "half", "fingers.index": "half", "fingers.cap": "true"},
}

func sizesMade(t *testing.T, of sheet.Sheet, girths ...float64) (list []NestedSize) {
	t.Helper()
	for _, g := range girths {
		s := maps.Clone(of)
		s["gauge.swatches[0].stitches"], s["gauge.swatches[0].width"], s["hand.hand_circumference"] = "24", "10", fmt.Sprint(g)
		req, err := s.Request()
		require.NoError(t, err)
		p, err := mitt.New().Plan(req)
		require.NoError(t, err)
		list = append(list, NestedSize{fmt.Sprint(g), p})
	}
	return list
}

// The schematic of every kind and construction, on both hands and for one size or several:
// each measure has its letter, which stands once on the drawing; no letter covers another;
// everything lies within the picture; and what is drawn of a length is as long as it is said
// to be, at the picture's scale.
func TestSchematicOfEveryWay(t *testing.T) {
	for name, of := range waysMade {
		for _, girths := range [][]float64{{19}, {15, 17, 19, 21, 23}} {
			sizes := sizesMade(t, of, girths...)
			list := LetteredOf(sizes)
			for _, left := range []bool{false, true} {
				s := Schematic(sizes, SchematicOptions{Left: left, Letter: 7, Plain: len(sizes) == 1})
				at := map[string][]draw.Item{}
				for _, i := range s.Items {
					if i.Kind == draw.TextItem {
						require.True(t, i.X > 0 && i.X < s.Width && i.Y > 0 && i.Y < s.Height, "%s: %s lies outside", name, i.Text)
						at[i.Text] = append(at[i.Text], i)
					}
				}
				for k, l := range list {
					require.Len(t, at[l.Letter], 1, "%s: letter %s, %s", name, l.Letter, l.Name)
					for _, other := range list[:k] {
						a, b := at[l.Letter][0], at[other.Letter][0]
						require.Greater(t, math.Hypot(a.X-b.X, a.Y-b.Y), 2*letterRing*7-0.01, "%s: %s and %s cover each other", name, l.Name, other.Name)
					}
				}
				for _, size := range sizes {
					require.Len(t, at[size.Name], map[bool]int{true: 0, false: 1}[len(sizes) == 1], "%s: name %s", name, size.Name)
				}
			}
		}
	}
}

// What is drawn of the lengths of a mitt is as long as they are said to be, and as broad as
// half of what is said to be around, by the flatness of its place.
func TestSchematicIsToScale(t *testing.T) {
	for name, of := range waysMade {
		for _, s := range sizesMade(t, of, 16, 20) {
			m := nested([]NestedSize{s})[0]
			for _, l := range s.Plan.Dimensions() {
				tube := m.tube(l.Part)
				switch {
				case tube == nil, l.Around && !digit(l.Part):
				case l.Around:
					e := tube.edges[tube.rounds()/2]
					require.InDelta(t, l.MM/2, length(e.out.plus(e.left.times(-1)))/flatThumb, 0.12*l.MM, "%s: %s", name, l.Name)
				case !digit(l.Part):
					require.InDelta(t, l.MM, tube.last().left.y-tube.edges[0].left.y, 0.01, "%s: %s", name, l.Name)
				default:
					low, high := tube.edges[0], tube.last()
					drawn := length(high.left.to(high.out, 0.5).plus(low.left.to(low.out, 0.5).times(-1)))
					require.InDelta(t, l.MM, drawn, 0.6+0.08*l.MM, "%s: %s", name, l.Name)
				}
			}
		}
	}
}
